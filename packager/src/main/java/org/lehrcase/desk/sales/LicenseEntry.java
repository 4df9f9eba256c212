package org.lehrcase.desk.sales;

import java.time.LocalDate;
import java.util.List;
import org.lehrcase.core.id.LicenseId;

/**
 * A license as the book knows it.
 *
 * @param id the license
 * @param person its owner
 * @param epoch the key epoch under which its keys are derived
 * @param issue how often its file was issued, from 1
 * @param terms what was bought
 * @param generation the newest key generation, raised when a place is retired
 * @param state whether the desk still serves it
 * @param day when it was first issued
 */
public record LicenseEntry(
    LicenseId id,
    Person person,
    int epoch,
    int issue,
    Terms terms,
    int generation,
    LicenseState state,
    LocalDate day) {

  /**
   * What a license gives.
   *
   * @param series the series it covers, sorted
   * @param places on how many laptops at once, 1 to 99
   * @param moves how often a laptop may pass its place on without the desk, 0 to 23
   */
  public record Terms(List<String> series, int places, int moves) {
    /** Copies and sorts the series. */
    public Terms {
      series = series.stream().distinct().sorted().toList();
    }
  }
}
