package org.lehrcase.bench.packaging;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.stream.Stream;

/**
 * The folder that goes onto a stick: launchers for each system, a page to read first, and below
 * {@code program} the jar once and a runtime for each system.
 *
 * @param folder where it lies
 */
record PortableFolder(Path folder) {
  private static final List<String> LAUNCHERS =
      List.of("start-lehrcase.sh", "Start Lehrcase.command", "Start Lehrcase.cmd");
  private static final String FIRST = "READ ME FIRST.html";
  private static final String OPTIONS = "bench.options";

  /** What it is made from. */
  record Sources(Path recipes, Path jar) {}

  /** Makes the folder without a runtime. */
  static PortableFolder make(Path folder, Sources from) throws IOException {
    clear(folder);
    Path program = Files.createDirectories(folder.resolve("program"));
    for (String name : LAUNCHERS) {
      boolean windows = name.endsWith(".cmd");
      String text = Files.readString(from.recipes().resolve(name));
      Files.writeString(folder.resolve(name), windows ? text.replace("\n", "\r\n") : text);
      runnable(folder.resolve(name));
    }
    Files.copy(from.recipes().resolve(FIRST), folder.resolve(FIRST));
    Files.copy(from.jar(), program.resolve("lehrcase-bench.jar"));
    try (InputStream options = PortableFolder.class.getResourceAsStream("../" + OPTIONS)) {
      Files.write(program.resolve(OPTIONS), options.readNBytes(1 << 16));
    }
    Icon.write(program);
    PortableFolder made = new PortableFolder(folder);
    made.listProgram();
    return made;
  }

  /** Takes a runtime for a system, such as {@code linux-x64}, and lists its files. */
  void list(String system) throws IOException {
    Path program = folder.resolve("program");
    Sums.write(program.resolve(system + ".sums"), folder, List.of(program.resolve(system)));
  }

  private void listProgram() throws IOException {
    Path program = folder.resolve("program");
    List<Path> files =
        List.of(
            program.resolve("lehrcase-bench.jar"),
            program.resolve(OPTIONS),
            program.resolve("lehrcase.png"),
            folder.resolve("start-lehrcase.sh"));
    Sums.write(program.resolve("bench.sums"), folder, files);
  }

  Path runtime(String system) {
    return folder.resolve("program").resolve(system);
  }

  private static void runnable(Path file) throws IOException {
    if (Files.getFileStore(file).supportsFileAttributeView("posix")) {
      Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rwxr-xr-x"));
    }
  }

  static void clear(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    List<Path> all;
    try (Stream<Path> inside = Files.walk(folder)) {
      all = inside.sorted((a, b) -> b.compareTo(a)).toList();
    }
    for (Path each : all) {
      Files.delete(each);
    }
  }
}
