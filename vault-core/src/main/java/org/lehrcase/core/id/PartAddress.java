package org.lehrcase.core.id;

/**
 * The address of a part: SHA-256 of its digest list, and so of its ciphertext.
 *
 * @param octets 32 octets
 */
public record PartAddress(Octets octets) {
  /** Length in bytes. */
  public static final int BYTES = 32;

  /** Checks the length. */
  public PartAddress {
    Octets.requireSize(octets, BYTES, "part address");
  }

  /**
   * Wraps a copy of the given bytes.
   *
   * @param bytes exactly {@link #BYTES} bytes
   * @return the identifier
   * @throws IllegalArgumentException if the length differs
   */
  public static PartAddress of(byte[] bytes) {
    return new PartAddress(Octets.of(bytes));
  }

  /**
   * Reads hexadecimal.
   *
   * @param hex twice {@link #BYTES} digits
   * @return the identifier
   * @throws IllegalArgumentException if the text is not such a number
   */
  public static PartAddress ofHex(String hex) {
    return new PartAddress(Octets.ofHex(hex));
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
