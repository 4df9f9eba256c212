package org.lehrcase.bench.opening;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.license.GiveBack;
import org.lehrcase.core.license.PlaceSeed;

/**
 * A laptop gives its place back to the teacher: the slip is stored and the keys are given up in one
 * step, and the slip is given out from what is stored, any number of times. Safe for many threads.
 */
public final class GiveBacks {
  private final Opening opening;
  private final StudyStore store;
  private final Places places;

  GiveBacks(Opening opening, StudyStore store, Places places) {
    this.opening = opening;
    this.store = store;
    this.places = places;
  }

  /**
   * Gives the place of a license back. From then on this laptop opens nothing of it.
   *
   * @param license which license
   * @return the slip for the teacher; the same one again if the place was given back before
   * @throws Trouble if there is no open place; nothing is changed
   * @throws VaultException if what is stored is damaged; nothing is changed
   * @throws IOException if the database cannot be written; the place is still here then
   */
  public GiveBack giveBack(LicenseId license) throws Trouble, VaultException, IOException {
    synchronized (opening) {
      Optional<CardPlace> open = opening.moves().active(license);
      if (open.isEmpty()) {
        return slip(license).orElseThrow(GiveBacks::noPlace);
      }
      CardPlace place = open.get();
      GiveBack slip = write(place);
      if (!store.givenBack().giveBack(place.cardDigest(), Octets.of(slip.toBytes()))) {
        throw noPlace();
      }
      opening.renewSecret();
      return slip;
    }
  }

  private GiveBack write(CardPlace place) throws Trouble, VaultException, IOException {
    PlaceId id = place.answer().orElseThrow(GiveBacks::noPlace).place();
    try (PlaceSeed seed = places.seedOf(place).orElseThrow(GiveBacks::noPlace)) {
      return GiveBack.issue(opening.moves().chainOf(place), id, seed);
    }
  }

  /**
   * Returns the slip of a license whose place was given back, as it is stored.
   *
   * @param license the license
   * @return the newest slip, or nothing
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be read
   */
  public Optional<GiveBack> slip(LicenseId license) throws VaultException, IOException {
    for (CardPlace place : places.all()) {
      if (place.license().equals(Optional.of(license))) {
        Optional<Octets> slip = store.givenBack().slip(place.cardDigest());
        if (slip.isPresent()) {
          return Optional.of(GiveBack.verify(slip.get().toBytes()));
        }
      }
    }
    return Optional.empty();
  }

  private static Trouble noPlace() {
    return new Trouble(
        TroubleCode.REFUSED,
        "There is no open place of this license on this laptop.",
        "Look at the licenses on the start page.");
  }
}
