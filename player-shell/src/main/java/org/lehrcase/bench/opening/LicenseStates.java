package org.lehrcase.bench.opening;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.store.PlaceState;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;

/** How far each license has come on this laptop, read anew at each question. */
record LicenseStates(StudyStore store, Places places) {
  LicenseState of(LicenseId license) throws VaultException, IOException {
    LicenseState best = LicenseState.NO_CARD;
    for (CardPlace place : places.all()) {
      if (place.license().equals(Optional.of(license))) {
        LicenseState state = state(place);
        if (state == LicenseState.ACTIVE) {
          return state;
        }
        best = best == LicenseState.NO_CARD ? state : best;
      }
    }
    return best;
  }

  private LicenseState state(CardPlace place) throws VaultException, IOException {
    if (place.state() == PlaceState.PASSED) {
      return store.givenBack().slip(place.cardDigest()).isPresent()
          ? LicenseState.GIVEN_BACK
          : LicenseState.PASSED;
    }
    if (place.answer().isEmpty()) {
      return LicenseState.ASKED;
    }
    return places.opens(place) ? LicenseState.ACTIVE : LicenseState.SHUT;
  }

  boolean isShut() throws VaultException, IOException {
    boolean shut = false;
    for (CardPlace place : places.all()) {
      LicenseState state = state(place);
      if (state == LicenseState.ACTIVE) {
        return false;
      }
      shut |= state == LicenseState.SHUT;
    }
    return shut;
  }
}
