package org.lehrcase.core.id;

import java.security.SecureRandom;

/**
 * Names one signed, numbered issue of a series (ρ in {@code docs/format.md}).
 *
 * @param octets 16 octets
 */
public record EditionId(Octets octets) {
  /** Length in bytes. */
  public static final int BYTES = 16;

  /** Checks the length. */
  public EditionId {
    Octets.requireSize(octets, BYTES, "edition id");
  }

  /**
   * Wraps a copy of the given bytes.
   *
   * @param bytes exactly {@link #BYTES} bytes
   * @return the identifier
   * @throws IllegalArgumentException if the length differs
   */
  public static EditionId of(byte[] bytes) {
    return new EditionId(Octets.of(bytes));
  }

  /**
   * Reads hexadecimal.
   *
   * @param hex twice {@link #BYTES} digits
   * @return the identifier
   * @throws IllegalArgumentException if the text is not such a number
   */
  public static EditionId ofHex(String hex) {
    return new EditionId(Octets.ofHex(hex));
  }

  /**
   * Draws a fresh identifier.
   *
   * @param random the source of randomness
   * @return a new identifier
   */
  public static EditionId random(SecureRandom random) {
    return new EditionId(Octets.random(random, BYTES));
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
