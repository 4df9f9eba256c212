package org.lehrcase.desk.answering;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.core.message.Line;

/**
 * What a buyer ordered.
 *
 * @param name the buyer's name, as it will stand on the license
 * @param email where license and letters go
 * @param series ids of the series, at least one
 * @param allowance how many laptops and moves
 */
public record Order(String name, String email, List<String> series, Allowance allowance) {
  private static final Pattern EMAIL = Pattern.compile("[^\\s@]{1,64}@[^\\s@]{1,189}");
  private static final Pattern SERIES =
      Pattern.compile("[a-z0-9-]{1," + License.SERIES_CHARS + "}");

  /** Copies the list. */
  public Order {
    series = List.copyOf(series);
  }

  /**
   * Checks the entries that a person typed.
   *
   * @param name the buyer's name
   * @param email the buyer's address
   * @param series ids separated by commas; capital letters are read as small ones
   * @param allowance how many laptops and moves
   * @return the order
   * @throws RefusedException if the address or a series cannot be right
   */
  public static Order typed(String name, String email, String series, Allowance allowance)
      throws RefusedException {
    if (!EMAIL.matcher(email.strip()).matches()) {
      throw wrong("\"" + email + "\" is no e-mail address.");
    }
    String buyer = Normalizer.normalize(name.strip(), Normalizer.Form.NFC);
    if (!Line.isClean(buyer) || buyer.length() > Line.NAME_CHARS) {
      throw wrong(
          "The name is empty, longer than 100 characters, or holds signs that no name has.");
    }
    List<String> ids = series(series);
    return new Order(buyer, email.strip(), ids, allowance);
  }

  /**
   * Splits and checks a list of series ids.
   *
   * @param typed ids separated by commas
   * @return the ids, each once
   * @throws RefusedException if there is none or one cannot be right
   */
  public static List<String> series(String typed) throws RefusedException {
    List<String> ids =
        List.of(typed.split(",", -1)).stream()
            .map(one -> one.strip().toLowerCase(Locale.ROOT))
            .distinct()
            .toList();
    for (String id : ids) {
      if (!SERIES.matcher(id).matches()) {
        throw wrong(
            "\"" + id + "\" is no series; use the id that stands in the course, such as brush.");
      }
    }
    return ids;
  }

  /**
   * Refuses an entry that a person typed.
   *
   * @param message what is wrong with it
   * @return the refusal
   */
  public static RefusedException wrongEntry(String message) {
    return wrong(message);
  }

  private static RefusedException wrong(String message) {
    return new RefusedException(
        Refusal.WRONG_ENTRY, message + " Nothing was changed; correct it and try again.");
  }
}
