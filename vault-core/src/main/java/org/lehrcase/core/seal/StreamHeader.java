package org.lehrcase.core.seal;

import java.nio.ByteBuffer;
import java.security.SecureRandom;
import java.util.Arrays;
import org.lehrcase.core.VaultException;

/**
 * The header of the published streaming construction: its own size, a salt and a nonce prefix.
 *
 * <p>Both random values are fresh for every sealing, which is what keeps two sealings of one file
 * under one part key apart. Nothing here is secret, and nothing here is authenticated by itself: a
 * flipped bit gives another key, so that no segment opens.
 */
final class StreamHeader {
  /** One length byte, 32 bytes of salt, 7 bytes of nonce prefix. */
  static final int SIZE_BYTES = 40;

  static final int SALT_BYTES = 32;
  static final int PREFIX_BYTES = 7;

  private final byte[] bytes;

  private StreamHeader(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Returns a header for one new part file. */
  static StreamHeader fresh(SecureRandom random) {
    byte[] bytes = new byte[SIZE_BYTES];
    random.nextBytes(bytes);
    bytes[0] = SIZE_BYTES;
    return new StreamHeader(bytes);
  }

  /**
   * Reads the header at the position of {@code file} and moves past it.
   *
   * @throws VaultException.Malformed if the length byte is not 40; it is compared, never obeyed
   */
  static StreamHeader parse(ByteBuffer file) throws VaultException {
    byte[] bytes = new byte[SIZE_BYTES];
    file.get(bytes);
    if (bytes[0] != SIZE_BYTES) {
      throw new VaultException.Malformed(
          "stream header: length " + (bytes[0] & 0xff) + ", expected " + SIZE_BYTES);
    }
    return new StreamHeader(bytes);
  }

  byte[] salt() {
    return Arrays.copyOfRange(bytes, 1, 1 + SALT_BYTES);
  }

  byte[] noncePrefix() {
    return Arrays.copyOfRange(bytes, 1 + SALT_BYTES, SIZE_BYTES);
  }

  /** Returns the 40 bytes as they stand in the file. */
  byte[] toBytes() {
    return bytes.clone();
  }
}
