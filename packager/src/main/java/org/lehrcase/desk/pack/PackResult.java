package org.lehrcase.desk.pack;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.id.EditionId;

/**
 * What came of a pack.
 *
 * @param edition the edition
 * @param number its number
 * @param folder where it is
 * @param splits where the folders with some of its parts are
 * @param news what is new in it, a line each; empty if nothing was and no edition was made
 * @param takenOverBytes how much was taken from the edition before or from an ended pack, in bytes
 */
public record PackResult(
    EditionId edition,
    int number,
    Path folder,
    Splits splits,
    List<String> news,
    long takenOverBytes) {
  /** Copies the list. */
  public PackResult {
    news = List.copyOf(news);
  }

  /**
   * Folders with some of the parts of the edition, as far as they were asked for.
   *
   * @param changes only what is new
   * @param light everything but the large films
   */
  public record Splits(Optional<Path> changes, Optional<Path> light) {}

  /** Returns where the folder of changes is. */
  public Optional<Path> changes() {
    return splits.changes();
  }

  /** Returns where the folder with the light films is. */
  public Optional<Path> light() {
    return splits.light();
  }
}
