package org.lehrcase.core.keys;

import java.nio.ByteBuffer;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.primitive.SecretBytes;

/** What a key letter carries (S = LK_g ‖ SS): the license key and the place's secret. */
public final class PlaceKeys implements AutoCloseable {
  /** Length in bytes. */
  public static final int BYTES = 64;

  /** Length of the check value in bytes. */
  public static final int CHECK_BYTES = 16;

  private final LicenseKey licenseKey;
  private final PlaceSecret placeSecret;

  /**
   * Joins the two.
   *
   * @param licenseKey the license key of some generation
   * @param placeSecret the secret of the place
   */
  public PlaceKeys(LicenseKey licenseKey, PlaceSecret placeSecret) {
    this.licenseKey = licenseKey;
    this.placeSecret = placeSecret;
  }

  /**
   * Takes the 64 bytes of a letter.
   *
   * @param generation the generation that the letter names
   * @param secret 64 bytes
   * @return the keys
   * @throws IllegalArgumentException if the length or the generation is impossible
   */
  public static PlaceKeys of(int generation, SecretBytes secret) {
    if (secret.sizeBytes() != BYTES) {
      throw new IllegalArgumentException("place keys need 64 bytes, not " + secret.sizeBytes());
    }
    return new PlaceKeys(
        new LicenseKey(generation, secret.slice(0, 32)), new PlaceSecret(secret.slice(32, BYTES)));
  }

  /** Returns the license key of this place's generation. */
  public LicenseKey licenseKey() {
    return licenseKey;
  }

  /** Returns the place's secret. */
  public PlaceSecret placeSecret() {
    return placeSecret;
  }

  /** Returns license key and place secret (64 bytes), for a letter or the laptop's own file. */
  public SecretBytes secret() {
    try (SecretBytes first = licenseKey.secret();
        SecretBytes second = placeSecret.secret()) {
      return first.concat(second);
    }
  }

  /**
   * Derives the public value by which a letter's keys are checked.
   *
   * @param place the place
   * @return 16 bytes
   */
  public Octets check(PlaceId place) {
    byte[] generation = ByteBuffer.allocate(4).putInt(licenseKey.generation()).array();
    try (SecretBytes key = licenseKey.secret();
        SecretBytes bound = placeSecret.secret();
        SecretBytes check =
            bound.use(
                ss ->
                    KeyLabel.PLACE_CHECK.derive(
                        key, CHECK_BYTES, ss, place.toBytes(), generation))) {
      return check.use(Octets::of);
    }
  }

  @Override
  public void close() {
    licenseKey.close();
    placeSecret.close();
  }

  @Override
  public String toString() {
    return "PlaceKeys[redacted]";
  }
}
