package org.lehrcase.core.message;

import java.util.Arrays;
import org.lehrcase.core.VaultException;

/** A place in encoded bytes, which never passes their end and never allocates more than is left. */
final class CborCursor {
  private final byte[] bytes;
  private int position;

  /** Begins at the first byte of an array that nobody changes from now on. */
  CborCursor(byte[] bytes) {
    this.bytes = bytes;
  }

  /** Returns the next byte, 0 to 255, and stays before it. */
  int peek() throws VaultException.Truncated {
    requireLeft(1);
    return bytes[position] & 0xff;
  }

  /** Returns the next byte, 0 to 255, and passes it. */
  int next() throws VaultException.Truncated {
    int value = peek();
    position++;
    return value;
  }

  /** Returns where the byte stands that was read last, for messages. */
  int last() {
    return position - 1;
  }

  /** Says whether nothing is left. */
  boolean isAtEnd() {
    return position == bytes.length;
  }

  /** Returns a copy of the next bytes and passes them. */
  byte[] take(int sizeBytes) throws VaultException.Truncated {
    requireLeft(sizeBytes);
    byte[] value = Arrays.copyOfRange(bytes, position, position + sizeBytes);
    position += sizeBytes;
    return value;
  }

  /** RFC 8949, 4.2.1: the argument must be as short as possible, its length definite. */
  long argument(int info) throws VaultException {
    if (info < 24) {
      return info;
    }
    if (info > 27) {
      throw new VaultException.Malformed("an indefinite or reserved length");
    }
    int size = 1 << info - 24;
    long value = 0;
    for (int i = 0; i < size; i++) {
      value = value << 8 | next();
    }
    boolean shorter = size == 1 ? value < 24 : value >>> 4 * size == 0;
    if (shorter) {
      throw new VaultException.Malformed("a number is not in its shortest form");
    }
    return value;
  }

  /** Checks that at least so many bytes are left. */
  void requireLeft(long sizeBytes) throws VaultException.Truncated {
    if (bytes.length - position < sizeBytes) {
      throw new VaultException.Truncated(
          "the bytes end at " + bytes.length + ", " + sizeBytes + " more are announced");
    }
  }
}
