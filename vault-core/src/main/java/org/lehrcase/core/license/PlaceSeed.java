package org.lehrcase.core.license;

import java.security.SecureRandom;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.KeyLabel;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.VerifyKey;
import org.lehrcase.core.primitive.X25519;

/**
 * The secret from which a laptop makes the two keys of one card or one ask. Made once for each,
 * kept under the laptop's secret, never deleted while an answer may still come.
 */
public final class PlaceSeed implements AutoCloseable {
  /** Length in bytes. */
  public static final int BYTES = 32;

  private final SecretBytes secret;

  private PlaceSeed(SecretBytes secret) {
    this.secret = secret;
  }

  /**
   * Draws a fresh seed.
   *
   * @param random the source of randomness
   * @return a new seed
   */
  public static PlaceSeed random(SecureRandom random) {
    return new PlaceSeed(SecretBytes.random(random, BYTES));
  }

  /**
   * Takes a seed that was kept; the bytes are copied.
   *
   * @param bytes 32 bytes
   * @return the seed
   */
  public static PlaceSeed of(SecretBytes bytes) {
    return new PlaceSeed(bytes.slice(0, BYTES));
  }

  /** Returns a copy, for keeping under the laptop's secret (32 bytes). */
  public SecretBytes secret() {
    return secret.slice(0, BYTES);
  }

  /**
   * Derives the public key that letters and links are sealed to (an X25519 public key, 32 bytes).
   */
  public Octets sealPublicKey() {
    try (SecretBytes key = sealKey()) {
      return X25519.publicKey(key);
    }
  }

  /**
   * Derives the public key that the card's, the ask's and a later link's signature verifies with.
   */
  public VerifyKey verifyKey() {
    try (SigningKey key = signingKey()) {
      return key.publicKey();
    }
  }

  SecretBytes sealKey() {
    return KeyLabel.CARD_SEAL.derive(secret);
  }

  SigningKey signingKey() {
    try (SecretBytes seed = KeyLabel.CARD_SIGN.derive(secret)) {
      return SigningKey.fromSeed(seed);
    }
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "PlaceSeed[redacted]";
  }
}
