package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/** Measures what an ended pack has left on the disk. */
final class StagedBytes {
  private StagedBytes() {}

  static long of(Path staging) throws IOException {
    if (!Files.isDirectory(staging)) {
      return 0;
    }
    long sum = 0;
    try (Stream<Path> all = Files.walk(staging)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        sum += Files.size(file);
      }
    }
    return sum;
  }
}
