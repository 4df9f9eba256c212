package org.lehrcase.bench.measure;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A program under measurement, with what Linux tells about it. Ends with this object. */
final class ChildProcess implements AutoCloseable {
  private static final double TICKS_PER_SECOND = 100;

  private final Process process;
  private final BufferedReader output;
  final long startedNanos;

  private ChildProcess(Process process, long startedNanos) {
    this.process = process;
    this.output = process.inputReader(StandardCharsets.UTF_8);
    this.startedNanos = startedNanos;
  }

  static ChildProcess start(List<String> command) throws IOException {
    long now = System.nanoTime();
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.redirectError(ProcessBuilder.Redirect.INHERIT);
    return new ChildProcess(builder.start(), now);
  }

  /** Waits for a line of its output and returns what the pattern found there. */
  String await(Pattern pattern) throws IOException {
    for (String line = output.readLine(); line != null; line = output.readLine()) {
      Matcher found = pattern.matcher(line);
      if (found.find()) {
        return found.group();
      }
    }
    throw new IOException("the program ended without saying " + pattern);
  }

  /** Runs a program to its end and returns all it said; fails if it failed. */
  static String run(List<String> command) throws IOException, InterruptedException {
    try (ChildProcess child = start(command)) {
      StringBuilder said = new StringBuilder();
      for (String line = child.output.readLine(); line != null; line = child.output.readLine()) {
        said.append(line).append('\n');
      }
      int code = child.process.waitFor();
      if (code != 0) {
        throw new IOException(command + " ended with " + code + ": " + said);
      }
      return said.toString();
    }
  }

  /** Returns processor seconds used so far, with those of its children. */
  double cpuSeconds() throws IOException {
    double seconds = cpuSeconds(process.pid());
    for (ProcessHandle child : process.children().toList()) {
      seconds += cpuSeconds(child.pid());
    }
    return seconds;
  }

  private static double cpuSeconds(long pid) throws IOException {
    String stat = Files.readString(Path.of("/proc/" + pid + "/stat"));
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ", -1);
    return (Long.parseLong(fields[11]) + Long.parseLong(fields[12])) / TICKS_PER_SECOND;
  }

  /** Returns a memory figure of the process in MB: {@code VmHWM} or {@code VmRSS}. */
  double megabytes(String name) throws IOException {
    for (String line : Files.readAllLines(Path.of("/proc/" + process.pid() + "/status"))) {
      if (line.startsWith(name + ":")) {
        return Long.parseLong(line.replaceAll("\\D", "")) * 1024 / 1e6;
      }
    }
    throw new IOException("no " + name);
  }

  @Override
  public void close() {
    process.descendants().forEach(ProcessHandle::destroy); // what a start script began
    process.destroy();
    try {
      if (!process.waitFor(10, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }
}
