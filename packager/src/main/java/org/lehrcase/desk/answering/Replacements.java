package org.lehrcase.desk.answering;

import java.io.IOException;
import java.time.LocalDate;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.desk.sales.SalesBook;

/**
 * How many laptops of a license may be replaced in a year without asking the teacher. The day
 * decides only whether she is asked, never what opens.
 */
public final class Replacements {
  /** Granted without asking if nothing else was set. */
  public static final int USUAL_PER_YEAR = 2;

  /** The most that can be set. */
  public static final int MOST_PER_YEAR = 99;

  private static final String SETTING = "replacements-per-year";
  private static final int YEAR_DAYS = 365;

  private final SalesBook book;

  /**
   * Works with a book.
   *
   * @param book the sales book
   */
  public Replacements(SalesBook book) {
    this.book = book;
  }

  /**
   * Returns how many are granted without asking.
   *
   * @return 0 to {@value #MOST_PER_YEAR}
   * @throws IOException if the book cannot be read
   */
  public int perYear() throws IOException {
    return book.settings().of(SETTING).map(Integer::parseInt).orElse(USUAL_PER_YEAR);
  }

  /**
   * Sets how many are granted without asking, and enters it in the book.
   *
   * @param perYear 0 to {@value #MOST_PER_YEAR}; 0 asks every time
   * @throws IOException if the book cannot be written
   */
  public void setPerYear(int perYear) throws IOException {
    if (perYear < 0 || perYear > MOST_PER_YEAR) {
      throw new IllegalArgumentException("replacements a year: " + perYear);
    }
    book.together(
        () -> {
          int before = perYear();
          book.settings().keep(SETTING, Integer.toString(perYear));
          return book.events().add("policy", SETTING, before + " to " + perYear);
        });
  }

  /**
   * Counts the replacements of a license in the last 365 days.
   *
   * @param license the license
   * @return how many places were retired for another laptop
   * @throws IOException if the book cannot be read
   */
  public int inTheLastYear(LicenseId license) throws IOException {
    LocalDate from = book.today().minusDays(YEAR_DAYS);
    return book.events().count("retired", license.hex(), from.toString());
  }
}
