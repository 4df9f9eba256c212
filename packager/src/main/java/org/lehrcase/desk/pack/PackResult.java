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
 * @param changes where the folder of changes is
 * @param news what is new in it, a line each; empty if nothing was and no edition was made
 * @param takenOverBytes how much was taken from the edition before or from an ended pack, in bytes
 */
public record PackResult(
    EditionId edition,
    int number,
    Path folder,
    Optional<Path> changes,
    List<String> news,
    long takenOverBytes) {
  /** Copies the list. */
  public PackResult {
    news = List.copyOf(news);
  }
}
