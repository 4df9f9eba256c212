package org.lehrcase.core.primitive;

import org.bouncycastle.math.ec.rfc8032.Ed25519;
import org.lehrcase.core.id.Octets;

/** The secret half of an Ed25519 key (RFC 8032). Never prints itself. Safe for many threads. */
public final class SigningKey implements AutoCloseable {
  private static final int SEED_BYTES = Ed25519.SECRET_KEY_SIZE;

  private final SecretBytes seed;
  private final VerifyKey publicKey;

  private SigningKey(SecretBytes seed) {
    this.seed = seed;
    this.publicKey = seed.use(SigningKey::publicKeyOf);
  }

  /**
   * Builds the key pair of a seed; the seed is copied.
   *
   * @param seed 32 bytes
   * @return the key
   */
  public static SigningKey fromSeed(SecretBytes seed) {
    if (seed.sizeBytes() != SEED_BYTES) {
      throw new IllegalArgumentException("a seed needs 32 bytes, not " + seed.sizeBytes());
    }
    return new SigningKey(seed.slice(0, SEED_BYTES));
  }

  /** Returns the public half. */
  public VerifyKey publicKey() {
    return publicKey;
  }

  /**
   * Signs deterministically.
   *
   * @param message the bytes to sign
   * @return 64 bytes
   */
  public byte[] sign(byte[] message) {
    byte[] signature = new byte[VerifyKey.SIGNATURE_BYTES];
    seed.lend(secret -> Ed25519.sign(secret, 0, message, 0, message.length, signature, 0));
    return signature;
  }

  /** Returns a copy of the seed, for storing under another key (32 secret bytes). */
  public SecretBytes seed() {
    return seed.slice(0, SEED_BYTES);
  }

  private static VerifyKey publicKeyOf(byte[] seed) {
    byte[] point = new byte[VerifyKey.BYTES];
    Ed25519.generatePublicKey(seed, 0, point, 0);
    return new VerifyKey(Octets.of(point));
  }

  @Override
  public void close() {
    seed.close();
  }

  @Override
  public String toString() {
    return "SigningKey[redacted]";
  }
}
