package org.lehrcase.desk.answering;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.LicenseState;
import org.lehrcase.desk.sales.SalesBook;

/** Finds the license that is meant. */
public final class LicenseSearch {
  private static final int MIN_DIGITS = 6;

  private final SalesBook book;

  /**
   * Searches a book.
   *
   * @param book the sales book
   */
  public LicenseSearch(SalesBook book) {
    this.book = book;
  }

  /**
   * Finds a license that is open.
   *
   * @param id the license
   * @return its entry
   * @throws RefusedException if it is unknown or blocked
   * @throws IOException if the book cannot be read
   */
  public LicenseEntry open(LicenseId id) throws IOException, RefusedException {
    LicenseEntry entry =
        book.licenses()
            .byId(id)
            .orElseThrow(
                () ->
                    refused(
                        Refusal.UNKNOWN_LICENSE,
                        "License " + id.hex() + " is not in this sales book."));
    if (entry.state() == LicenseState.BLOCKED) {
      throw refused(
          Refusal.BLOCKED_LICENSE, "The license of " + entry.person().name() + " is blocked.");
    }
    return entry;
  }

  /**
   * Finds a license by what a person types: its id, the first digits of it, or the buyer's address
   * if that buyer has one license.
   *
   * @param typed id, at least six digits of it, or e-mail address
   * @return the license
   * @throws RefusedException if none or several fit
   * @throws IOException if the book cannot be read
   */
  public LicenseId typed(String typed) throws IOException, RefusedException {
    String wanted = typed.strip().toLowerCase(Locale.ROOT);
    List<LicenseEntry> found = book.licenses().all().stream().filter(e -> fits(e, wanted)).toList();
    if (found.isEmpty()) {
      throw refused(Refusal.UNKNOWN_LICENSE, "No license fits \"" + typed + "\".");
    }
    if (found.size() > 1) {
      throw refused(
          Refusal.UNKNOWN_LICENSE,
          found.size() + " licenses fit \"" + typed + "\"; give the whole id of one.");
    }
    return found.get(0).id();
  }

  private static boolean fits(LicenseEntry entry, String wanted) {
    boolean digits = wanted.length() >= MIN_DIGITS && entry.id().hex().startsWith(wanted);
    return digits || entry.person().email().toLowerCase(Locale.ROOT).equals(wanted);
  }

  private static RefusedException refused(Refusal reason, String message) {
    return new RefusedException(reason, message + " Nothing was changed.");
  }
}
