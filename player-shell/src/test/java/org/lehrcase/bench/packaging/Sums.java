package org.lehrcase.bench.packaging;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** Lists of SHA-256 values in the form that {@code sha256sum -c} and {@code shasum -c} read. */
final class Sums {
  private Sums() {}

  /** Writes the list of files, or of all files in folders, named from a base folder on. */
  static void write(Path list, Path base, List<Path> of) throws IOException {
    StringBuilder text = new StringBuilder();
    for (Path start : of) {
      List<Path> files;
      try (Stream<Path> all = Files.walk(start)) {
        files = all.filter(Files::isRegularFile).sorted().toList();
      }
      for (Path file : files) {
        String name = base.relativize(file).toString().replace('\\', '/');
        text.append(sha256(file)).append("  ").append(name).append('\n');
      }
    }
    Files.writeString(list, text);
  }

  static String sha256(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file);
        DigestInputStream digest =
            new DigestInputStream(in, MessageDigest.getInstance("SHA-256"))) {
      digest.transferTo(java.io.OutputStream.nullOutputStream());
      return HexFormat.of().formatHex(digest.getMessageDigest().digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java runtime has SHA-256", e);
    }
  }
}
