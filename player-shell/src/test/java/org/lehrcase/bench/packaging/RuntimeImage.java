package org.lehrcase.bench.packaging;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** Links a Java runtime that holds what the program needs and nothing else. */
final class RuntimeImage {
  /** By jdeps, and what it cannot see: elliptic curves also for https, Unsafe for JNA. */
  static final List<String> MODULES =
      List.of(
          "java.base",
          "java.desktop",
          "java.logging",
          "java.management",
          "java.naming",
          "java.net.http",
          "java.sql",
          "jdk.crypto.ec",
          "jdk.unsupported");

  private RuntimeImage() {}

  /**
   * Links a runtime.
   *
   * @param modules the folder of jmod files; of a foreign system, or this Java's own
   * @param own whether the runtime is for this system
   * @param target a folder that does not exist
   */
  static void link(Path modules, boolean own, Path target)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "jlink").toString());
    command.addAll(List.of("--module-path", modules.toString()));
    command.addAll(List.of("--add-modules", String.join(",", MODULES)));
    command.addAll(List.of("--strip-java-debug-attributes", "--no-header-files", "--no-man-pages"));
    if (own) {
      command.addAll(List.of("--strip-native-debug-symbols=exclude-debuginfo-files"));
      command.add("--generate-cds-archive"); // needs the runtime itself, so only for this system
    }
    command.addAll(List.of("--output", target.toString()));
    Commands.run(command);
    Files.deleteIfExists(target.resolve("lib/server/classes_nocoops.jsa")); // for heaps above 32 GB
    flatten(target);
  }

  /** Replaces the links among the licenses by what they point to: a stick has no links. */
  private static void flatten(Path folder) throws IOException {
    List<Path> links;
    try (Stream<Path> all = Files.walk(folder)) {
      links = all.filter(Files::isSymbolicLink).toList();
    }
    for (Path link : links) {
      Path real = link.toRealPath();
      Files.delete(link);
      Files.copy(real, link);
    }
  }
}
