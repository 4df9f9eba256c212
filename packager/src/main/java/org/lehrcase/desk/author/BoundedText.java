package org.lehrcase.desk.author;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.table.PlainText;

/** Reads small files whole, and no others. */
final class BoundedText {
  /** Most bytes of a table, a chapter list or a handout in Markdown. */
  static final int MAX_BYTES = 2 << 20;

  private BoundedText() {}

  /**
   * Reads a text file.
   *
   * @param findings where it is said that the file is too large or cannot be read
   * @return the text; empty if there is a finding instead
   */
  static Optional<String> read(Path file, String place, int maxBytes, List<Finding> findings) {
    return bytes(file, place, maxBytes, findings).map(PlainText::decode);
  }

  /** Reads a file as bytes, in the same manner. */
  static Optional<byte[]> bytes(Path file, String place, int maxBytes, List<Finding> findings) {
    try (InputStream in = Files.newInputStream(file)) {
      var bytes = in.readNBytes(maxBytes + 1);
      if (bytes.length <= maxBytes) {
        return Optional.of(bytes);
      }
      findings.add(
          Finding.error(
              place,
              "is larger than " + Amounts.bytes(maxBytes) + ", too large for a file of this kind",
              "check that it is what its name says, or split it"));
    } catch (IOException e) {
      findings.add(unreadable(place, e));
    }
    return Optional.empty();
  }

  static Finding unreadable(String place, IOException e) {
    var reason = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
    return Finding.error(
        place, "cannot be read: " + reason, "check the medium and the rights of the file");
  }
}
