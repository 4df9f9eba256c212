package org.lehrcase.scene;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** One of the two jars, run as a person would. */
enum Program {
  DESK(Path.of("target", "lehrcase-desk.jar")),
  BENCH(Path.of("..", "player-shell", "target", "lehrcase-bench.jar"));

  private static final int PATIENCE_SECONDS = 180;

  private final Path jar;

  Program(Path jar) {
    this.jar = jar;
  }

  /** What a finished run said. */
  record Said(int exitCode, String text) {}

  /** Runs to the end. */
  Said run(Path home, String... words) throws IOException, InterruptedException {
    Process process = start(home, words);
    process.getOutputStream().close();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("still running: " + String.join(" ", words));
    }
    return new Said(process.exitValue(), text);
  }

  /** Runs to the end and expects success. */
  String ok(Path home, String... words) throws IOException, InterruptedException {
    Said said = run(home, words);
    if (said.exitCode() != 0) {
      throw new AssertionError(String.join(" ", words) + " ended with " + said);
    }
    return said.text();
  }

  /** Starts and leaves running; messages go with the output. */
  Process start(Path userHome, String... words) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-Xmx256m", "-Duser.home=" + userHome));
    command.addAll(List.of("-Djava.io.tmpdir=" + userHome.resolve("tmp")));
    command.addAll(List.of("-jar", jar.toAbsolutePath().normalize().toString()));
    Stream.of(words).forEach(command::add);
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder
        .environment()
        .putAll(
            Map.of(
                "HOME", userHome.toString(),
                "XDG_DATA_HOME", userHome.resolve("share").toString(),
                "XDG_STATE_HOME", userHome.resolve("state").toString()));
    return builder.start();
  }

  /** Starts the bench and returns its one-time address. */
  static RunningBench bench(Path userHome, Path home) throws IOException {
    return page(BENCH.start(userHome, "open", "--home", home.toString(), "--no-browser"));
  }

  /** Starts the desk's page, locked, and returns its one-time address. */
  static RunningBench desk(Path userHome, Path home) throws IOException {
    return page(DESK.start(userHome, "open", "--home", home.toString(), "--no-browser"));
  }

  private static RunningBench page(Process process) throws IOException {
    BufferedReader lines =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    StringBuilder said = new StringBuilder();
    for (String line = lines.readLine(); line != null; line = lines.readLine()) {
      said.append(line).append('\n');
      if (line.startsWith("http://127.0.0.1:")) {
        Thread rest = new Thread(() -> lines.lines().forEach(said::append), "page output");
        rest.setDaemon(true);
        rest.start();
        return new RunningBench(process, line.strip());
      }
    }
    throw new AssertionError("the page did not start: " + said);
  }

  /** A bench, or a desk, that is running. */
  record RunningBench(Process process, String address) implements AutoCloseable {
    /** Ends it at once, as a power cut would. */
    void kill() throws InterruptedException {
      process.destroyForcibly().waitFor();
    }

    @Override
    public void close() {
      process.destroy();
      try {
        if (!process.waitFor(10, TimeUnit.SECONDS)) {
          process.destroyForcibly();
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
