package org.lehrcase.core.edition;

import org.lehrcase.core.course.CourseText;
import org.lehrcase.core.id.EditionId;

/**
 * What an edition is called and where it stands in its series.
 *
 * @param edition random id, which also leads to its keys
 * @param series id of the series
 * @param restores how often the desk has been restored from a copy; a restored desk may have
 *     forgotten numbers
 * @param number number of the edition, from 1
 * @param title title of the series
 * @param description a few sentences for those who do not own it yet, or empty
 * @param whereToBuy an address for a person to read, or empty
 */
public record EditionTitle(
    EditionId edition,
    String series,
    int restores,
    int number,
    String title,
    String description,
    String whereToBuy) {

  /** Most characters of the place to buy. */
  public static final int MAX_WHERE = 300;

  /**
   * Checks every field.
   *
   * @throws IllegalArgumentException if a text or a number breaks its rule
   */
  public EditionTitle {
    CourseText.seriesId(series);
    CourseText.name(title);
    CourseText.paragraph(description);
    CourseText.line(whereToBuy, MAX_WHERE);
    if (restores < 0 || number < 1) {
      throw new IllegalArgumentException("editions are numbered from 1, restores from 0");
    }
  }

  /** Says whether this edition came after another of the same series. */
  public boolean isNewerThan(EditionTitle other) {
    return restores != other.restores ? restores > other.restores : number > other.number;
  }
}
