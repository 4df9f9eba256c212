package org.lehrcase.core.id;

import java.security.SecureRandom;

/**
 * Names one file of a lesson; bound into the header of each of its parts.
 *
 * @param octets 16 octets
 */
public record AssetId(Octets octets) {
  /** Length in bytes. */
  public static final int BYTES = 16;

  /** Checks the length. */
  public AssetId {
    Octets.requireSize(octets, BYTES, "asset id");
  }

  /**
   * Wraps a copy of the given bytes.
   *
   * @param bytes exactly {@link #BYTES} bytes
   * @return the identifier
   * @throws IllegalArgumentException if the length differs
   */
  public static AssetId of(byte[] bytes) {
    return new AssetId(Octets.of(bytes));
  }

  /**
   * Reads hexadecimal.
   *
   * @param hex twice {@link #BYTES} digits
   * @return the identifier
   * @throws IllegalArgumentException if the text is not such a number
   */
  public static AssetId ofHex(String hex) {
    return new AssetId(Octets.ofHex(hex));
  }

  /**
   * Draws a fresh identifier.
   *
   * @param random the source of randomness
   * @return a new identifier
   */
  public static AssetId random(SecureRandom random) {
    return new AssetId(Octets.random(random, BYTES));
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
