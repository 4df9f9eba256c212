package org.lehrcase.bench.courses;

import java.nio.file.Path;
import java.util.List;
import org.lehrcase.core.edition.EditionFolder;

/**
 * Where an edition lies now: on the laptop, on its stick, or on both.
 *
 * @param folder the edition with every folder to look in, the laptop's own first
 * @param own the folders that hold this very edition
 * @param stickIsIn whether one of them is the stick or folder that was brought in
 */
record Located(EditionFolder folder, List<Path> own, boolean stickIsIn) {
  Located {
    own = List.copyOf(own);
  }

  /** Says whether everything that was found is where it was. */
  boolean isStillThere() {
    return own.stream().allMatch(EditionFinder::isAt);
  }
}
