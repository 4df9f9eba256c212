package org.lehrcase.bench.measure;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The options of the Java runtime with which every package starts the bench. */
final class BenchOptions {
  private static final int MAX_BYTES = 1 << 16;

  private BenchOptions() {}

  static List<String> read() throws IOException {
    try (InputStream in =
        BenchOptions.class.getResourceAsStream("/org/lehrcase/bench/bench.options")) {
      return new String(in.readNBytes(MAX_BYTES), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#") && !line.isBlank())
          .toList();
    }
  }
}
