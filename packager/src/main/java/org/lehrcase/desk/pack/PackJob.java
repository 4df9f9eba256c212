package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.desk.home.OwnerFiles;

/**
 * An edition on its way, noted in the home so that an ended pack goes on with it.
 *
 * @param edition the edition
 * @param number its number within the series
 * @param target where it will appear
 */
record PackJob(EditionId edition, int number, Path target) {
  private static final int MAX_BYTES = 8192;
  private static final int LINES = 3;

  /** Returns the folder in which the edition is made: beside its place, on the same disk. */
  Path staging() {
    return target.resolveSibling("." + target.getFileName() + ".packing");
  }

  /** Returns the folder in which the edition's folder appears. */
  Path place() {
    Path parent = target.toAbsolutePath().getParent();
    return parent == null ? target.toAbsolutePath() : parent;
  }

  static Path file(Path packing, String series) {
    return packing.resolve(series + ".job");
  }

  static Optional<PackJob> read(Path file) throws IOException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    List<String> lines =
        new String(OwnerFiles.read(file, MAX_BYTES), StandardCharsets.UTF_8).lines().toList();
    if (lines.size() != LINES) {
      throw new IOException(file + " is damaged. Delete it; the next pack starts afresh.");
    }
    return Optional.of(
        new PackJob(
            EditionId.ofHex(lines.get(0)), Integer.parseInt(lines.get(1)), Path.of(lines.get(2))));
  }

  void write(Path file) throws IOException {
    String text = edition.hex() + "\n" + number + "\n" + target + "\n";
    OwnerFiles.write(file, text.getBytes(StandardCharsets.UTF_8));
  }
}
