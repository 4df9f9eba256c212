package org.lehrcase.core.id;

import java.security.SecureRandom;

/**
 * Names a lesson through all editions of its series, whatever its number and title become.
 *
 * @param octets 16 octets
 */
public record LessonId(Octets octets) {
  /** Length in bytes. */
  public static final int BYTES = 16;

  /** Checks the length. */
  public LessonId {
    Octets.requireSize(octets, BYTES, "lesson id");
  }

  /**
   * Wraps a copy of the given bytes.
   *
   * @param bytes exactly {@link #BYTES} bytes
   * @return the identifier
   * @throws IllegalArgumentException if the length differs
   */
  public static LessonId of(byte[] bytes) {
    return new LessonId(Octets.of(bytes));
  }

  /**
   * Reads hexadecimal.
   *
   * @param hex twice {@link #BYTES} digits
   * @return the identifier
   * @throws IllegalArgumentException if the text is not such a number
   */
  public static LessonId ofHex(String hex) {
    return new LessonId(Octets.ofHex(hex));
  }

  /**
   * Draws a fresh identifier.
   *
   * @param random the source of randomness
   * @return a new identifier
   */
  public static LessonId random(SecureRandom random) {
    return new LessonId(Octets.random(random, BYTES));
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
