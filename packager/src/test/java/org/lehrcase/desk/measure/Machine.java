package org.lehrcase.desk.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Runs the desk as it is shipped, and the system's own tools beside it. */
final class Machine {
  private final Path work;
  private final Path jar;

  Machine(Path work, Path jar) {
    this.work = work;
    this.jar = jar;
  }

  /** Runs the desk's jar to its end. */
  void desk(String... words) throws IOException, InterruptedException {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                jar.toString()));
    command.addAll(List.of(words));
    run(command.toArray(String[]::new));
  }

  /** Runs a command to its end; what it says is shown only if it fails. */
  void run(String... command) throws IOException, InterruptedException {
    Path said = work.resolve("said.txt");
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    Process process = builder.redirectOutput(said.toFile()).start();
    if (process.waitFor() != 0) {
      throw new IOException(Arrays.toString(command) + " failed:\n" + Files.readString(said));
    }
  }
}
