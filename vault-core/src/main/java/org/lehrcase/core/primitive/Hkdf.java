package org.lehrcase.core.primitive;

import org.bouncycastle.crypto.digests.SHA256Digest;
import org.bouncycastle.crypto.generators.HKDFBytesGenerator;
import org.bouncycastle.crypto.params.HKDFParameters;

/** HKDF with SHA-256 (RFC 5869), extract and expand. */
public final class Hkdf {
  private Hkdf() {}

  /**
   * Derives key material.
   *
   * @param inputKey the input keying material
   * @param salt the salt; empty stands for 32 zero bytes, as the RFC says
   * @param info the context
   * @param sizeBytes how many bytes, 1 to 8,160
   * @return the derived bytes, for the caller to zero
   */
  public static byte[] sha256(byte[] inputKey, byte[] salt, byte[] info, int sizeBytes) {
    HKDFBytesGenerator hkdf = new HKDFBytesGenerator(new SHA256Digest());
    hkdf.init(new HKDFParameters(inputKey, salt, info));
    byte[] derived = new byte[sizeBytes];
    hkdf.generateBytes(derived, 0, sizeBytes);
    return derived;
  }
}
