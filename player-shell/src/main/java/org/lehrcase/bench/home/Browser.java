package org.lehrcase.bench.home;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Opens a file in the person's browser with what each system has for it. */
public final class Browser {
  private Browser() {}

  /**
   * Opens a file.
   *
   * @param file the page
   * @return whether something took the file
   */
  public static boolean open(Path file) {
    for (List<String> command : commands(System.getProperty("os.name", ""), file.toString())) {
      try {
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
        return true;
      } catch (IOException e) {
        continue; // not on this system: try the next
      }
    }
    return false;
  }

  /** Lists the commands to try, in order. */
  public static List<List<String>> commands(String system, String file) {
    String name = system.toLowerCase(Locale.ROOT);
    if (name.startsWith("windows")) {
      return List.of(List.of("rundll32", "url.dll,FileProtocolHandler", file));
    }
    if (name.startsWith("mac")) {
      return List.of(List.of("open", file));
    }
    return List.of(
        List.of("xdg-open", file), List.of("sensible-browser", file), List.of("firefox", file));
  }
}
