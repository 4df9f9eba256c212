package org.lehrcase.core.edition;

import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.seal.SegmentLayout;

/**
 * One sealed file of an edition, as the front page names it.
 *
 * @param folder number of its folder; 0 for files that several lessons share
 * @param address its address, which is its name
 * @param sealedBytes its exact length
 * @param rendition in which copies of the edition it travels
 */
public record PartEntry(int folder, PartAddress address, long sealedBytes, Rendition rendition) {

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if the folder is not 0 to 999 or the length is not that of a
   *     part
   */
  public PartEntry {
    if (folder < 0 || folder > Lesson.MAX_NUMBER) {
      throw new IllegalArgumentException("a folder outside 0 to " + Lesson.MAX_NUMBER);
    }
    if (sealedBytes < 1 || sealedBytes > SegmentLayout.MAX_SEALED_BYTES) {
      throw new IllegalArgumentException("a part of " + sealedBytes + " bytes");
    }
  }
}
