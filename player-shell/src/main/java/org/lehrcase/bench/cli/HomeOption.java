package org.lehrcase.bench.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.courses.SearchRoots;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.home.DataPlace;
import org.lehrcase.bench.laptop.LocalSecret;
import org.lehrcase.bench.laptop.MachineTraits;
import picocli.CommandLine.Option;

/** The option that every command shares. */
final class HomeOption {
  @Option(
      names = "--home",
      paramLabel = "DIR",
      description = "Folder for your data; the usual place of your system if left out.")
  private @Nullable Path home;

  DataPlace place() throws IOException {
    DataPlace usual =
        DataPlace.usual(
            System.getProperty("os.name", ""),
            Path.of(System.getProperty("user.home", ".")),
            System.getenv());
    DataPlace place = Optional.ofNullable(home).map(usual::withHome).orElse(usual);
    place.ensure();
    return place;
  }

  /** Opens the data folder with this machine around it; the caller closes it. */
  Bench open(DataPlace place) throws IOException {
    SecureRandom random = new SecureRandom();
    LocalSecret secret = new LocalSecret(place.local(), random);
    secret.ensure();
    return Bench.open(
        place.home(),
        new Bench.World(
            new MachineTraits(secret),
            SearchRoots.ofSystemAnd(programFolder()),
            Clock.systemUTC(),
            random));
  }

  /** The start script says where it lies, since the program may run from a copy elsewhere. */
  private static Optional<Path> programFolder() {
    String folder = System.getProperty("lehrcase.folder", "");
    return folder.isBlank() ? Optional.empty() : Optional.of(Path.of(folder).toAbsolutePath());
  }

  Bench open() throws IOException {
    return open(place());
  }
}
