package org.lehrcase.core.primitive;

import org.bouncycastle.math.ec.rfc8032.Ed25519;
import org.lehrcase.core.id.Octets;

/**
 * The public half of an Ed25519 key (RFC 8032).
 *
 * @param octets 32 bytes
 */
public record VerifyKey(Octets octets) {
  /** Length of a public key in bytes. */
  public static final int BYTES = Ed25519.PUBLIC_KEY_SIZE;

  /** Length of a signature in bytes. */
  public static final int SIGNATURE_BYTES = Ed25519.SIGNATURE_SIZE;

  /** Checks the length. */
  public VerifyKey {
    if (octets.size() != BYTES) {
      throw new IllegalArgumentException("a public key needs 32 bytes, not " + octets.size());
    }
  }

  /**
   * Wraps a copy of the given bytes.
   *
   * @param bytes 32 bytes
   * @return the key
   */
  public static VerifyKey of(byte[] bytes) {
    return new VerifyKey(Octets.of(bytes));
  }

  /**
   * Checks a signature.
   *
   * @param message the signed bytes
   * @param signature the signature, 64 bytes; any other length fails
   * @return whether this key signed these bytes; false also for a key that is no curve point
   */
  public boolean verifies(byte[] message, byte[] signature) {
    if (signature.length != SIGNATURE_BYTES) {
      return false;
    }
    byte[] key = octets.toBytes();
    return Ed25519.validatePublicKeyFull(key, 0)
        && Ed25519.verify(signature, 0, key, 0, message, 0, message.length);
  }
}
