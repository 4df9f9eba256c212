package org.lehrcase.bench.home;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import org.lehrcase.core.file.OwnerOnly;

/**
 * Where a bench keeps what is the student's, and, elsewhere on purpose, the secret of this laptop.
 *
 * @param home the data folder
 * @param local the folder of the laptop's own secret, outside the data folder
 */
public record DataPlace(Path home, Path local) {
  private static final String NAME = "lehrcase";

  /**
   * Returns the usual place of the system.
   *
   * @param system the value of the property {@code os.name}
   * @param user the user's own folder
   * @param environment the environment variables
   * @return the usual place
   */
  public static DataPlace usual(String system, Path user, Map<String, String> environment) {
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      // what travels with the user to other computers would not open there
      Path local = folder(environment, "LOCALAPPDATA", user.resolve("AppData/Local"));
      return new DataPlace(local.resolve("Lehrcase"), local.resolve("Lehrcase-laptop"));
    }
    if (name.startsWith("mac")) {
      Path library = user.resolve("Library");
      return new DataPlace(
          library.resolve("Application Support/Lehrcase"), library.resolve("Preferences/Lehrcase"));
    }
    Path data = folder(environment, "XDG_DATA_HOME", user.resolve(".local/share"));
    Path config = folder(environment, "XDG_CONFIG_HOME", user.resolve(".config"));
    return new DataPlace(data.resolve(NAME), config.resolve(NAME));
  }

  private static Path folder(Map<String, String> environment, String name, Path otherwise) {
    String value = environment.getOrDefault(name, "");
    return value.isBlank() ? otherwise : Path.of(value);
  }

  /**
   * Returns the same with another data folder.
   *
   * @param other the data folder
   * @return the place
   */
  public DataPlace withHome(Path other) {
    return new DataPlace(other.toAbsolutePath().normalize(), local);
  }

  /**
   * Makes the data folder, for its owner only, unless it is there.
   *
   * @throws IOException if it cannot be made
   */
  public void ensure() throws IOException {
    if (Files.isDirectory(home)) {
      return;
    }
    Path parent = home.toAbsolutePath().getParent();
    if (parent != null) {
      Files.createDirectories(parent);
    }
    Files.createDirectory(home, OwnerOnly.folder(home));
  }
}
