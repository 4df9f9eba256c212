package org.lehrcase.core.device;

import java.security.SecureRandom;
import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.KeyLabel;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.core.primitive.KeyWrap;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * The laptop's secret (DS): everything that a laptop keeps of its places is wrapped under keys from
 * it. A new one after a place was passed on makes what is left of the old one useless.
 */
public final class DeviceSecret implements AutoCloseable {
  /** Length in bytes. */
  public static final int BYTES = 32;

  private static final int CONTEXT_BYTES = 16;

  private final SecretBytes secret;

  DeviceSecret(SecretBytes secret) {
    this.secret = secret;
  }

  static DeviceSecret random(SecureRandom random) {
    return new DeviceSecret(SecretBytes.random(random, BYTES));
  }

  SecretBytes secret() {
    return secret.slice(0, BYTES);
  }

  /**
   * Wraps the seed of a card or an ask.
   *
   * @param digest the digest of that card or ask, 16 bytes
   * @param seed the seed
   * @return 40 bytes to store
   */
  public Octets wrapSeed(Octets digest, PlaceSeed seed) {
    try (SecretBytes clear = seed.secret()) {
      return wrap(KeyLabel.PLACE_SEED, digest, clear);
    }
  }

  /**
   * Opens a stored seed.
   *
   * @param digest the digest of the card or ask
   * @param wrapped what {@link #wrapSeed} returned
   * @return the seed
   * @throws VaultException.Tampered if it was wrapped by another laptop or for another card
   */
  public PlaceSeed openSeed(Octets digest, Octets wrapped) throws VaultException.Tampered {
    try (SecretBytes clear = open(KeyLabel.PLACE_SEED, digest, wrapped, PlaceSeed.BYTES)) {
      return PlaceSeed.of(clear);
    }
  }

  /**
   * Wraps a place's keys.
   *
   * @param digest the digest of the card or ask that they came for, 16 bytes
   * @param keys the keys
   * @return 72 bytes to store, beside the keys' generation
   */
  public Octets wrapKeys(Octets digest, PlaceKeys keys) {
    try (SecretBytes clear = keys.secret()) {
      return wrap(KeyLabel.PLACE_KEYS, digest, clear);
    }
  }

  /**
   * Opens stored keys.
   *
   * @param digest the digest of the card or ask
   * @param generation the stored generation
   * @param wrapped what {@link #wrapKeys} returned
   * @return the keys
   * @throws VaultException.Tampered if they were wrapped by another laptop or for another card
   */
  public PlaceKeys openKeys(Octets digest, int generation, Octets wrapped)
      throws VaultException.Tampered {
    try (SecretBytes clear = open(KeyLabel.PLACE_KEYS, digest, wrapped, PlaceKeys.BYTES)) {
      return PlaceKeys.of(generation, clear);
    }
  }

  private Octets wrap(KeyLabel purpose, Octets digest, SecretBytes clear) {
    try (SecretBytes kek = purpose.derive(secret, context(digest))) {
      return Octets.of(kek.use(key -> clear.use(raw -> KeyWrap.wrap(key, raw))));
    }
  }

  private SecretBytes open(KeyLabel purpose, Octets digest, Octets wrapped, int sizeBytes)
      throws VaultException.Tampered {
    if (wrapped.size() != sizeBytes + 8) {
      throw new VaultException.Tampered("a stored key has an impossible length");
    }
    try (SecretBytes kek = purpose.derive(secret, context(digest))) {
      byte[] key = kek.use(byte[]::clone);
      try {
        return SecretBytes.taking(KeyWrap.unwrap(key, wrapped.toBytes()));
      } finally {
        Arrays.fill(key, (byte) 0);
      }
    }
  }

  private static byte[] context(Octets digest) {
    if (digest.size() != CONTEXT_BYTES) {
      throw new IllegalArgumentException("a digest has 16 bytes, not " + digest.size());
    }
    return digest.toBytes();
  }

  /**
   * Compares in constant time.
   *
   * @param other another secret
   * @return whether both are of the same laptop
   */
  public boolean sameAs(DeviceSecret other) {
    return secret.sameAs(other.secret);
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "DeviceSecret[redacted]";
  }
}
