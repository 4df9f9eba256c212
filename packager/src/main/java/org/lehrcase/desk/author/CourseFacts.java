package org.lehrcase.desk.author;

import java.util.Set;
import org.lehrcase.core.course.AssetRole;

/**
 * What a series says about itself, every text fit for the front page.
 *
 * @param series id of the series: lower-case letters, digits and hyphens
 * @param words the texts
 * @param openLessons numbers of the lessons that play without a license
 * @param printable roles whose files a student may save for printing
 */
public record CourseFacts(
    String series, Words words, Set<Integer> openLessons, Set<AssetRole> printable) {

  /**
   * The texts of a series.
   *
   * @param title one line
   * @param description a few sentences, or empty
   * @param whereToBuy address or sentence, or empty
   * @param teacher who made the course, or empty
   */
  public record Words(String title, String description, String whereToBuy, String teacher) {}

  /** Copies the sets. */
  public CourseFacts {
    openLessons = Set.copyOf(openLessons);
    printable = Set.copyOf(printable);
  }
}
