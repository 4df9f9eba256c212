package org.lehrcase.core.id;

import java.security.SecureRandom;

/**
 * Names what one buyer owns (λ in {@code docs/format.md}).
 *
 * @param octets 16 octets
 */
public record LicenseId(Octets octets) {
  /** Length in bytes. */
  public static final int BYTES = 16;

  /** Checks the length. */
  public LicenseId {
    Octets.requireSize(octets, BYTES, "license id");
  }

  /**
   * Wraps a copy of the given bytes.
   *
   * @param bytes exactly {@link #BYTES} bytes
   * @return the identifier
   * @throws IllegalArgumentException if the length differs
   */
  public static LicenseId of(byte[] bytes) {
    return new LicenseId(Octets.of(bytes));
  }

  /**
   * Reads hexadecimal.
   *
   * @param hex twice {@link #BYTES} digits
   * @return the identifier
   * @throws IllegalArgumentException if the text is not such a number
   */
  public static LicenseId ofHex(String hex) {
    return new LicenseId(Octets.ofHex(hex));
  }

  /**
   * Draws a fresh identifier.
   *
   * @param random the source of randomness
   * @return a new identifier
   */
  public static LicenseId random(SecureRandom random) {
    return new LicenseId(Octets.random(random, BYTES));
  }

  /**
   * Returns lower-case hexadecimal.
   *
   * @return twice {@link #BYTES} digits
   */
  public String hex() {
    return octets.hex();
  }

  /**
   * Returns a copy of the bytes.
   *
   * @return {@link #BYTES} bytes
   */
  public byte[] toBytes() {
    return octets.toBytes();
  }

  @Override
  public String toString() {
    return hex();
  }
}
