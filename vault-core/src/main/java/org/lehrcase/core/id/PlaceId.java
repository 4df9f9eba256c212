package org.lehrcase.core.id;

import java.security.SecureRandom;

/**
 * Names the right to use a license on one laptop (σ in {@code docs/format.md}).
 *
 * @param octets 8 octets
 */
public record PlaceId(Octets octets) {
  /** Length in bytes. */
  public static final int BYTES = 8;

  /** Checks the length. */
  public PlaceId {
    Octets.requireSize(octets, BYTES, "place id");
  }

  /**
   * Wraps a copy of the given bytes.
   *
   * @param bytes exactly {@link #BYTES} bytes
   * @return the identifier
   * @throws IllegalArgumentException if the length differs
   */
  public static PlaceId of(byte[] bytes) {
    return new PlaceId(Octets.of(bytes));
  }

  /**
   * Reads hexadecimal.
   *
   * @param hex twice {@link #BYTES} digits
   * @return the identifier
   * @throws IllegalArgumentException if the text is not such a number
   */
  public static PlaceId ofHex(String hex) {
    return new PlaceId(Octets.ofHex(hex));
  }

  /**
   * Draws a fresh identifier.
   *
   * @param random the source of randomness
   * @return a new identifier
   */
  public static PlaceId random(SecureRandom random) {
    return new PlaceId(Octets.random(random, BYTES));
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
