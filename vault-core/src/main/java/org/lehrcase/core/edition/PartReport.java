package org.lehrcase.core.edition;

import java.util.List;

/**
 * What a look at one part found.
 *
 * @param part its entry on the front page
 * @param state what was found
 * @param damagedSegments numbers of the segments that are damaged; may be empty for a damaged part
 *     that could not be read at all
 */
public record PartReport(PartEntry part, PartState state, List<Integer> damagedSegments) {

  /** Copies the list. */
  public PartReport {
    damagedSegments = List.copyOf(damagedSegments);
  }

  static PartReport of(PartEntry part, PartState state) {
    return new PartReport(part, state, List.of());
  }
}
