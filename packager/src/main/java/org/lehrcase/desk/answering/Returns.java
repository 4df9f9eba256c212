package org.lehrcase.desk.answering;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.license.GiveBack;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.Place;
import org.lehrcase.desk.sales.SalesBook;

/**
 * Takes places back. The slip was signed by the laptop that had the place last, along the chain
 * from the card that this desk answered; a place is freed once, however often the slip comes.
 */
public final class Returns {
  private final SalesBook book;

  /**
   * Works with a book.
   *
   * @param book the sales book
   */
  public Returns(SalesBook book) {
    this.book = book;
  }

  /**
   * What became of a slip.
   *
   * @param license whose place it was
   * @param again whether the place was free already; nothing was changed then
   */
  public record Returned(LicenseEntry license, boolean again) {}

  /**
   * Frees a place. It is retired like a lost one: what a copy of that laptop's disk still opens
   * stays open, and nothing that is packed from now on.
   *
   * @param slip a verified slip
   * @return whose place it was
   * @throws RefusedException if this desk gave no such place to that laptop; nothing is changed
   * @throws IOException if the book cannot be used; nothing is changed
   */
  public Returned take(GiveBack slip) throws IOException, RefusedException {
    return book.<Returned, RefusedException>together(
        () -> {
          Optional<Place> found = book.places().answeredBy(slip.chain().card().digest());
          Place place =
              found
                  .filter(one -> one.id().equals(slip.place()))
                  .orElseThrow(
                      () ->
                          refused(
                              Refusal.UNKNOWN_PLACE,
                              "This slip gives a place back that this desk did not give to that"
                                  + " laptop."));
          LicenseEntry license =
              book.licenses()
                  .byId(place.license())
                  .orElseThrow(
                      () ->
                          refused(
                              Refusal.UNKNOWN_LICENSE, "The license of this slip is not known."));
          if (!place.living()) {
            return new Returned(license, true);
          }
          free(place, license);
          return new Returned(license, false);
        });
  }

  private void free(Place place, LicenseEntry license) throws IOException, RefusedException {
    if (license.generation() >= LicenseKey.LAST_GENERATION) {
      throw refused(
          Refusal.KEYS_USED_UP,
          "Places of this license were replaced or given back "
              + LicenseKey.LAST_GENERATION
              + " times, which is the limit; sell a new license.");
    }
    book.places().retire(place.license(), place.id());
    book.licenses().raiseGeneration(place.license());
    book.events().add("given back", place.id().hex(), place.license().hex());
  }

  private static RefusedException refused(Refusal reason, String message) {
    return new RefusedException(reason, message + " Nothing was changed.");
  }
}
