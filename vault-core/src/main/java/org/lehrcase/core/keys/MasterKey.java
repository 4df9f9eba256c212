package org.lehrcase.core.keys;

import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;

/** The desk's key of an epoch: every edition, license and place key is derived from it. */
public final class MasterKey implements AutoCloseable {
  private static final int PACK_MEMORY_BYTES = 64;

  private final int epoch;
  private final SecretBytes secret;

  MasterKey(int epoch, SecretBytes secret) {
    this.epoch = epoch;
    this.secret = secret;
  }

  /**
   * Takes a key that the desk kept under its passphrase; the bytes are copied.
   *
   * @param epoch the key's epoch
   * @param bytes 32 bytes
   * @return the key
   */
  public static MasterKey of(int epoch, SecretBytes bytes) {
    return new MasterKey(epoch, bytes.slice(0, 32));
  }

  /** Returns the key's epoch (0 for the first). */
  public int epoch() {
    return epoch;
  }

  /** Returns a copy, for the desk's keys file (32 bytes). */
  public SecretBytes secret() {
    return secret.slice(0, 32);
  }

  /**
   * Derives the key of an edition.
   *
   * @param edition the edition
   * @return its key
   */
  public EditionKey editionKey(EditionId edition) {
    return new EditionKey(KeyLabel.EDITION.derive(secret, edition.toBytes()));
  }

  /**
   * Derives a license key.
   *
   * @param license the license
   * @param generation 0 to {@link LicenseKey#LAST_GENERATION}; raised by one when a place is lost
   * @return the key of that generation
   */
  public LicenseKey licenseKey(LicenseId license, int generation) {
    LicenseKey newest =
        new LicenseKey(
            LicenseKey.LAST_GENERATION, KeyLabel.LICENSE.derive(secret, license.toBytes()));
    return newest.at(generation);
  }

  /**
   * Derives the secret of one place.
   *
   * @param license the license
   * @param place a place of it
   * @return the place's secret
   */
  public PlaceSecret placeSecret(LicenseId license, PlaceId place) {
    return new PlaceSecret(KeyLabel.PLACE.derive(secret, license.toBytes(), place.toBytes()));
  }

  /** Derives the seed of the key that can only issue licenses. */
  public SigningKey issueKey() {
    try (SecretBytes seed = issueSeed()) {
      return SigningKey.fromSeed(seed);
    }
  }

  /**
   * Derives what issuing needs (32 bytes): it signs licenses and makes codes, and opens nothing.
   */
  public SecretBytes issueSeed() {
    return KeyLabel.ISSUE.derive(secret);
  }

  /** Derives what protects the desk's memory of its packing: wrapping key, then marking key. */
  public SecretBytes packMemory() {
    return KeyLabel.PACK_MEMORY.derive(secret, PACK_MEMORY_BYTES);
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "MasterKey[epoch " + epoch + ", redacted]";
  }
}
