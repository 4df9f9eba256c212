package org.lehrcase.desk.unpacking;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/** What an attempt that ended early left behind. */
record OldFolder(Path folder) {
  void remove() throws IOException {
    if (!Files.isDirectory(folder)) {
      return;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path one : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(one);
      }
    }
  }
}
