package org.lehrcase.desk.measure;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.SplittableRandom;

/**
 * Makes a course of lessons with films of a little less than 1 GiB each: a real film of a second,
 * with its index in front, and a long last box of noise that players skip.
 */
final class HeavyCourse {
  private static final int MIB = 1 << 20;
  private static final int NOISE_MIB = 1000;

  private HeavyCourse() {}

  static void make(Path course, int lessons) throws IOException, InterruptedException {
    Files.createDirectories(course);
    Files.writeString(
        course.resolve("course.yaml"),
        "id: heavy\ntitle: Heavy\nteacher: Nobody\nopen-lessons: [1]\n");
    for (int number = 1; number <= lessons; number++) {
      Path lesson = Files.createDirectories(course.resolve("%02d lesson".formatted(number)));
      Path film = lesson.resolve("film.mp4");
      encode(film);
      try (OutputStream out =
          Files.newOutputStream(film, java.nio.file.StandardOpenOption.APPEND)) {
        noise(out, number);
      }
    }
  }

  private static void encode(Path film) throws IOException, InterruptedException {
    String command =
        "ffmpeg -loglevel error -f lavfi -i testsrc2=size=640x360:rate=25 -t 1 -c:v libx264"
            + " -pix_fmt yuv420p -movflags +faststart ";
    ProcessBuilder encoder = new ProcessBuilder((command + film.getFileName()).split(" "));
    encoder.directory(film.getParent().toFile());
    if (encoder.inheritIO().start().waitFor() != 0) {
      throw new IOException("the encoder failed");
    }
  }

  private static void noise(OutputStream out, int seed) throws IOException {
    byte[] block = new byte[MIB];
    ByteBuffer head = ByteBuffer.allocate(8).putInt(NOISE_MIB * MIB + 8);
    out.write(head.put("free".getBytes(StandardCharsets.US_ASCII)).array());
    SplittableRandom random = new SplittableRandom(seed);
    for (int i = 0; i < NOISE_MIB; i++) {
      random.nextBytes(block);
      out.write(block);
    }
  }

  static long bytes(Path folder) throws IOException {
    try (var files = Files.walk(folder)) {
      return files.filter(Files::isRegularFile).mapToLong(HeavyCourse::size).sum();
    }
  }

  private static long size(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static void delete(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return;
    }
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path visited, IOException failure)
              throws IOException {
            Files.delete(visited);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
