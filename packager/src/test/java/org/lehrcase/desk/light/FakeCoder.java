package org.lehrcase.desk.light;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;

/** An encoder of a few lines of shell, which copies a small film instead of making one. */
public final class FakeCoder {
  private final Path folder;

  private FakeCoder(Path folder) {
    this.folder = folder;
  }

  /** Makes one that works. */
  public static FakeCoder in(Path folder) throws IOException {
    assumeTrue(File.separatorChar == '/', "the fake encoder is a shell script");
    FakeCoder coder = new FakeCoder(Files.createDirectories(folder));
    film("index-in-front.mp4", folder.resolve("small.mp4"));
    coder.does("echo out_time_us=100000; cat " + coder.small() + " > \"$target\"");
    return coder;
  }

  /** Copies one of the sample films. */
  public static void film(String sample, Path target) throws IOException {
    Files.createDirectories(target.toAbsolutePath().getParent());
    try (InputStream in =
        Objects.requireNonNull(FakeCoder.class.getResourceAsStream("/media/" + sample))) {
      Files.write(target, in.readAllBytes());
    }
  }

  /** Returns the film that it copies. */
  public Path small() {
    return folder.resolve("small.mp4");
  }

  /** Changes what it does; {@code $film} and {@code $target} are the two paths. */
  public void does(String shell) throws IOException {
    String script =
        "#!/bin/sh\necho \"$*\" >> "
            + log()
            + "\nfor word; do\n"
            + "  [ \"$before\" = -i ] && film=\"${word#file:}\"\n  before=\"$word\"\ndone\n"
            + "target=\"${word#file:}\"\n"
            + shell
            + "\n";
    Files.write(program(), script.getBytes(StandardCharsets.UTF_8));
    if (!program().toFile().setExecutable(true)) {
      throw new IOException("not made executable");
    }
  }

  public Path program() {
    return folder.resolve("ffmpeg");
  }

  /** Returns the command lines that it was given, in order. */
  public List<String> calls() throws IOException {
    return Files.exists(log()) ? Files.readAllLines(log()) : List.of();
  }

  private Path log() {
    return folder.resolve("calls");
  }
}
