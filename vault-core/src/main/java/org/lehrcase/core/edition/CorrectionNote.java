package org.lehrcase.core.edition;

import java.time.LocalDate;
import java.util.Optional;
import org.lehrcase.core.course.CourseText;
import org.lehrcase.core.course.Moment;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;

/**
 * What a correction says.
 *
 * @param lesson the lesson it belongs to
 * @param pin whether the position is a time or a page
 * @param position milliseconds from the start of the video, or the page from 1
 * @param asset the file whose page it is; present exactly for a page
 * @param text what is right
 * @param day when the teacher wrote it
 */
public record CorrectionNote(
    LessonId lesson,
    CorrectionPin pin,
    long position,
    Optional<AssetId> asset,
    String text,
    LocalDate day) {

  /**
   * Checks every field.
   *
   * @throws IllegalArgumentException if the text is empty or breaks its rule, or pin, position and
   *     file do not fit together
   */
  public CorrectionNote {
    if (CourseText.paragraph(text).isBlank()) {
      throw new IllegalArgumentException("a correction says something");
    }
    boolean page = pin == CorrectionPin.PAGE;
    if (asset.isPresent() != page) {
      throw new IllegalArgumentException("a correction names a file exactly if it is of a page");
    }
    long first = page ? 1 : 0;
    long last = page ? Moment.MAX_PAGE : Moment.MAX_MILLIS;
    if (position < first || position > last) {
      throw new IllegalArgumentException("a correction lies outside its film or file");
    }
    if (day.getYear() < 2000 || day.getYear() > 9999) {
      throw new IllegalArgumentException("a day outside the years 2000 to 9999");
    }
  }
}
