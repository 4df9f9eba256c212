package org.lehrcase.core.license;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.Line;

/**
 * What a license says a buyer owns.
 *
 * @param license the license's id, the same in every issue of it
 * @param issue when and as which issue it was written
 * @param name the buyer's name
 * @param series ids of the series that are covered, in the order to show
 * @param allowance how many laptops, and how often a place may move
 */
public record LicenseTerms(
    LicenseId license, Issue issue, String name, List<String> series, Allowance allowance) {
  private static final int DAY_CHARS = 10;

  /** Copies the list. */
  public LicenseTerms {
    series = List.copyOf(series);
  }

  /**
   * Which writing of the license this is.
   *
   * @param epoch the key epoch of the desk
   * @param number 1 for the first; a higher one replaces a lower one
   * @param day the day it was issued; for people, no program decides by it
   */
  public record Issue(int epoch, int number, LocalDate day) {}

  /**
   * How many laptops.
   *
   * @param places places that may be in use at once, 1 to 99
   * @param moves how often each place may move without the desk, 0 to {@link KeyLetter#MAX_MOVES}
   */
  public record Allowance(int places, int moves) {
    /** Most places of one license. */
    public static final int MAX_PLACES = 99;

    /** Checks the ranges. */
    public Allowance {
      if (places < 1 || places > MAX_PLACES || moves < 0 || moves > KeyLetter.MAX_MOVES) {
        throw new IllegalArgumentException("a license has 1 to 99 places and 0 to 23 moves");
      }
    }
  }

  void write(CborWriter payload) {
    payload.bytes(license.octets()).uint(issue.epoch()).uint(issue.number()).text(name);
    payload.array(series.size());
    series.forEach(payload::text);
    payload.uint(allowance.places()).uint(allowance.moves()).text(issue.day().toString());
  }

  static LicenseTerms read(CborReader fields) throws VaultException {
    LicenseId license = new LicenseId(fields.octets(LicenseId.BYTES));
    int epoch = fields.smallUint(Integer.MAX_VALUE);
    int number = fields.smallUint(Integer.MAX_VALUE);
    String name = fields.line(Line.NAME_CHARS);
    int count = fields.array(License.MAX_SERIES);
    List<String> series = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      series.add(fields.line(License.SERIES_CHARS));
    }
    int places = fields.smallUint(Allowance.MAX_PLACES);
    int moves = fields.smallUint(KeyLetter.MAX_MOVES);
    if (places == 0) {
      throw new VaultException.Malformed("a license without a place");
    }
    Issue issue = new Issue(epoch, number, day(fields));
    return new LicenseTerms(license, issue, name, series, new Allowance(places, moves));
  }

  private static LocalDate day(CborReader fields) throws VaultException {
    String text = fields.line(DAY_CHARS);
    try {
      LocalDate day = LocalDate.parse(text);
      if (day.toString().equals(text)) {
        return day;
      }
    } catch (DateTimeException e) {
      throw new VaultException.Malformed("a day is not written as YYYY-MM-DD");
    }
    throw new VaultException.Malformed("a day is not written as YYYY-MM-DD");
  }
}
