package org.lehrcase.core.primitive;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;

/** SHA-256 (FIPS 180-4) over public bytes. */
public final class Sha256 {
  private Sha256() {}

  /** Returns a fresh digest for streaming use. */
  public static MessageDigest start() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java runtime has SHA-256", e);
    }
  }

  /**
   * Hashes the concatenation of the given pieces.
   *
   * @param pieces hashed in order
   * @return 32 bytes
   */
  public static byte[] of(byte[]... pieces) {
    MessageDigest digest = start();
    for (byte[] piece : pieces) {
      digest.update(piece);
    }
    return digest.digest();
  }

  /**
   * Hashes the concatenation and keeps the first half.
   *
   * @param pieces hashed in order
   * @return the first 16 bytes of SHA-256
   */
  public static byte[] of16(byte[]... pieces) {
    return Arrays.copyOf(of(pieces), 16);
  }
}
