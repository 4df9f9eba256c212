package org.lehrcase.bench.courses;

import java.util.List;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;

/**
 * One lesson that can be studied now.
 *
 * @param edition its opened edition
 * @param lesson the lesson
 * @param corrections what the teacher corrected since
 * @param log the damage met so far
 */
public record StudyLesson(
    OpenedEdition edition, Lesson lesson, List<CorrectionNote> corrections, DamageLog log) {
  /** Copies the list. */
  public StudyLesson {
    corrections = List.copyOf(corrections);
  }

  /**
   * Says whether a paper may be saved for printing: the teacher allows it kind by kind. Printing
   * from the page needs no permission.
   *
   * @param asset the paper
   * @return whether the teacher allows it
   */
  public boolean mayPrint(Asset asset) {
    return mayPrint(edition, asset);
  }

  /**
   * Says the same of any file of an edition.
   *
   * @param edition the edition
   * @param asset the paper
   * @return whether it may be saved
   */
  public static boolean mayPrint(OpenedEdition edition, Asset asset) {
    return edition.contents().map(c -> c.printable().contains(asset.role())).orElse(false);
  }

  /**
   * Returns where a file of this lesson is damaged.
   *
   * @param asset the file
   * @return clear positions, ascending
   */
  public List<Long> damage(AssetId asset) {
    return log.of(asset);
  }
}
