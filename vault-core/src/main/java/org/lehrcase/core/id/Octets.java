package org.lehrcase.core.id;

import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * An immutable string of public octets with value equality. Immutable and safe for many threads.
 * Not for secrets: {@link #toString} prints it.
 */
public final class Octets implements Comparable<Octets> {
  private static final HexFormat HEX = HexFormat.of();

  private final byte[] bytes;

  private Octets(byte[] owned) {
    this.bytes = owned;
  }

  /**
   * Returns a copy of the given bytes.
   *
   * @param bytes the octets, copied
   * @return the same octets, immutable
   */
  public static Octets of(byte[] bytes) {
    return new Octets(bytes.clone());
  }

  /**
   * Reads lower- or upper-case hexadecimal.
   *
   * @param hex an even number of hexadecimal digits
   * @return the octets
   * @throws IllegalArgumentException if the text is not hexadecimal
   */
  public static Octets ofHex(String hex) {
    return new Octets(HEX.parseHex(hex));
  }

  /**
   * Draws fresh octets.
   *
   * @param random the source of randomness
   * @param sizeBytes how many octets
   * @return random octets
   */
  public static Octets random(SecureRandom random, int sizeBytes) {
    byte[] fresh = new byte[sizeBytes];
    random.nextBytes(fresh);
    return new Octets(fresh);
  }

  /** Returns the length in bytes. */
  public int size() {
    return bytes.length;
  }

  /** Returns a copy that the caller may change. */
  public byte[] toBytes() {
    return bytes.clone();
  }

  /** Returns the octets as lower-case hexadecimal. */
  public String hex() {
    return HEX.formatHex(bytes);
  }

  /**
   * Returns a contiguous piece.
   *
   * @param from first octet, counted from 0
   * @param to one past the last octet
   * @return the octets in between
   * @throws IndexOutOfBoundsException if the range lies outside
   */
  public Octets slice(int from, int to) {
    if (from < 0 || to > bytes.length || from > to) {
      throw new IndexOutOfBoundsException(from + ".." + to + " of " + bytes.length);
    }
    return new Octets(Arrays.copyOfRange(bytes, from, to));
  }

  /** Orders by unsigned octets, shorter first when one is the prefix of the other. */
  @Override
  public int compareTo(Octets other) {
    return Arrays.compareUnsigned(bytes, other.bytes);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Octets that && MessageDigest.isEqual(bytes, that.bytes);
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(bytes);
  }

  @Override
  public String toString() {
    return hex();
  }

  /**
   * Checks a length in a compact constructor.
   *
   * @param octets the value to check
   * @param sizeBytes the only length allowed
   * @param name what the value is, for the message
   * @throws IllegalArgumentException if the length differs
   */
  static void requireSize(Octets octets, int sizeBytes, String name) {
    if (octets.size() != sizeBytes) {
      throw new IllegalArgumentException(
          name + " needs " + sizeBytes + " bytes, not " + octets.size());
    }
  }
}
