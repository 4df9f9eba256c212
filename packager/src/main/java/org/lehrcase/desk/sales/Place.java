package org.lehrcase.desk.sales;

import java.time.LocalDate;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;

/**
 * The right of one laptop, with the letter that it was given.
 *
 * @param license the license it belongs to
 * @param id the place
 * @param state living or retired
 * @param generation the key generation that its letter holds
 * @param cardDigest the digest of the card that was answered
 * @param letter the letter, byte for byte
 * @param since the day of the letter
 */
public record Place(
    LicenseId license,
    PlaceId id,
    PlaceState state,
    int generation,
    Octets cardDigest,
    Octets letter,
    LocalDate since) {

  /**
   * Says whether this place may open editions packed from now on.
   *
   * @return whether it lives
   */
  public boolean living() {
    return state == PlaceState.LIVE;
  }
}
