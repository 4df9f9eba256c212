package org.lehrcase.core.primitive;

import org.lehrcase.core.id.Octets;

/** X25519 public keys (RFC 7748). */
public final class X25519 {
  /** Length of a public or private key in bytes. */
  public static final int BYTES = org.bouncycastle.math.ec.rfc7748.X25519.POINT_SIZE;

  private X25519() {}

  /**
   * Returns the public half of a private key.
   *
   * @param privateKey 32 secret bytes
   * @return 32 public bytes
   */
  public static Octets publicKey(SecretBytes privateKey) {
    byte[] point = new byte[BYTES];
    privateKey.lend(
        secret -> org.bouncycastle.math.ec.rfc7748.X25519.generatePublicKey(secret, 0, point, 0));
    return Octets.of(point);
  }
}
