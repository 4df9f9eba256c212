package org.lehrcase.desk.light;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.io.InterruptedIOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.LongConsumer;

/** The encoder: a program that the teacher has installed, run as a child without a shell. */
public final class FilmCoder {
  private static final List<String> NAMES = List.of("ffmpeg", "ffmpeg.exe");

  private final Path program;
  private final Consumer<ProcessHandle> started;

  /**
   * Uses a program.
   *
   * @param program its absolute path
   * @param started told of each child, so that it can be ended should we be gone
   */
  FilmCoder(Path program, Consumer<ProcessHandle> started) {
    this.program = program;
    this.started = started;
  }

  /**
   * How a child ended.
   *
   * @param code its exit code, 0 for success
   * @param words the last lines that it said, made harmless
   */
  record Ending(int code, String words) {}

  /**
   * Looks for the encoder where the system looks for programs, and never in the folder in which we
   * happen to stand.
   *
   * @param searched the value of the variable PATH
   * @return the program's file
   */
  public static Optional<Path> onPath(String searched) {
    for (String place : searched.split(File.pathSeparator)) {
      for (String name : NAMES) {
        Optional<Path> found = runnable(place, name);
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }

  private static Optional<Path> runnable(String place, String name) {
    try {
      Path file = Path.of(place).resolve(name);
      return file.isAbsolute() && Files.isRegularFile(file) && Files.isExecutable(file)
          ? Optional.of(file)
          : Optional.empty();
    } catch (InvalidPathException e) {
      return Optional.empty(); // a search path may hold anything
    }
  }

  /**
   * Runs the encoder to its end. The child ends with us: when this returns, is interrupted, or the
   * program is stopped.
   *
   * @param arguments each one word
   * @param doneMillis told how far the new film reaches, in milliseconds
   * @throws IOException if the program cannot be started or its output breaks off
   */
  Ending run(List<String> arguments, LongConsumer doneMillis) throws IOException {
    List<String> command = new ArrayList<>(List.of(program.toString()));
    command.addAll(arguments);
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().remove("FFREPORT"); // it would write a log with the film's path
    Process child = start(builder);
    Thread end = new Thread(child::destroyForcibly, "end the encoder");
    Runtime.getRuntime().addShutdownHook(end);
    try (InputStream output = child.getInputStream()) {
      started.accept(child.toHandle());
      child.getOutputStream().close();
      CoderWords words = new CoderWords(doneMillis);
      words.readAll(output);
      return new Ending(child.waitFor(), words.said());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("The light copy was stopped.");
    } finally {
      child.destroyForcibly();
      forget(end);
    }
  }

  private Process start(ProcessBuilder builder) throws IOException {
    try {
      return builder.start();
    } catch (IOException e) {
      throw new IOException(
          program + " cannot be started (" + e.getMessage() + "). Nothing was packed.", e);
    }
  }

  private static void forget(Thread hook) {
    try {
      Runtime.getRuntime().removeShutdownHook(hook);
    } catch (IllegalStateException e) {
      // we are being stopped, and the hook has run
    }
  }
}
