package org.lehrcase.core.edition;

import java.util.List;
import org.lehrcase.core.course.Rendition;

/**
 * What a look at the parts of one lesson found, or at those that several lessons share.
 *
 * @param folder number of the folder; 0 for shared parts
 * @param title title of the lesson; empty for shared parts
 * @param parts one report per part, in the order of the front page
 */
public record FolderReport(int folder, String title, List<PartReport> parts) {

  /** Copies the list. */
  public FolderReport {
    parts = List.copyOf(parts);
  }

  /** Returns how many parts were found in a state. */
  public long count(PartState state) {
    return parts.stream().filter(p -> p.state() == state).count();
  }

  /**
   * Returns the state of the lesson: damaged if any part is; else here if it is complete in the
   * full or in the light rendition; else not here.
   */
  public PartState state() {
    if (count(PartState.DAMAGED) > 0) {
      return PartState.DAMAGED;
    }
    return isComplete() ? PartState.HERE : PartState.NOT_HERE;
  }

  /** Every common part, and all of one rendition if there are renditions. */
  private boolean isComplete() {
    boolean full = has(Rendition.FULL);
    boolean light = has(Rendition.LIGHT);
    boolean either =
        (full && allHere(Rendition.FULL))
            || (light && allHere(Rendition.LIGHT))
            || !(full || light);
    return allHere(Rendition.COMMON) && either;
  }

  private boolean has(Rendition rendition) {
    return parts.stream().anyMatch(p -> p.part().rendition() == rendition);
  }

  private boolean allHere(Rendition rendition) {
    return parts.stream()
        .filter(p -> p.part().rendition() == rendition)
        .allMatch(p -> p.state() == PartState.HERE);
  }
}
