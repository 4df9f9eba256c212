package org.lehrcase.bench.browser;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * Finds a Chromium and its driver on this machine. On Debian, as root, it installs the two packages
 * when they are missing; elsewhere it says what to install, and the test fails with that sentence.
 */
public record InstalledChromium(Path browser, Path driver) {
  private static final String HOW =
      "Browser tests need Chromium (or Chrome) and its driver on the PATH."
          + " Debian and Ubuntu: apt-get install chromium chromium-driver."
          + " Fedora: dnf install chromium chromedriver."
          + " macOS and Windows: install the browser and the driver of the same version.";

  /**
   * Finds or installs the browser.
   *
   * @return where both programs are
   */
  public static synchronized InstalledChromium find() {
    return onPath()
        .or(
            () -> {
              installOnDebian();
              return onPath();
            })
        .orElseThrow(() -> new IllegalStateException(HOW));
  }

  private static Optional<InstalledChromium> onPath() {
    Optional<Path> browser =
        firstOf("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome");
    Optional<Path> driver = firstOf("chromedriver", "chromium-driver");
    return browser.flatMap(b -> driver.map(d -> new InstalledChromium(b, d)));
  }

  private static Optional<Path> firstOf(String... names) {
    String ending = System.getProperty("os.name").startsWith("Windows") ? ".exe" : "";
    List<Path> candidates = new ArrayList<>();
    for (String name : names) {
      for (String folder : System.getenv("PATH").split(java.io.File.pathSeparator)) {
        candidates.add(Path.of(folder, name + ending));
      }
    }
    return candidates.stream().filter(Files::isExecutable).findFirst();
  }

  private static void installOnDebian() {
    if (!Files.exists(Path.of("/etc/debian_version"))
        || !"root".equals(System.getProperty("user.name").toLowerCase(Locale.ROOT))) {
      return;
    }
    run(List.of("apt-get", "update", "-qq"));
    run(
        List.of(
            "apt-get",
            "install",
            "-y",
            "-qq",
            "--no-install-recommends",
            "chromium",
            "chromium-driver"));
  }

  private static void run(List<String> command) {
    ProcessBuilder builder = new ProcessBuilder(command).inheritIO();
    builder.environment().putAll(Map.of("DEBIAN_FRONTEND", "noninteractive"));
    try {
      Process process = builder.start();
      if (!process.waitFor(10, TimeUnit.MINUTES) || process.exitValue() != 0) {
        process.destroyForcibly();
        throw new IllegalStateException(String.join(" ", command) + " failed. " + HOW);
      }
    } catch (IOException e) {
      throw new IllegalStateException(HOW, e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(HOW, e);
    }
  }
}
