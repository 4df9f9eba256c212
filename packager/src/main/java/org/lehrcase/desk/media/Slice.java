package org.lehrcase.desk.media;

import java.nio.charset.StandardCharsets;

/**
 * A window of bytes in memory that refuses to be read past its end.
 *
 * <p>Numbers are big-endian. Positions count from the start of the window. Not copied: whoever
 * makes the window gives the array away.
 */
final class Slice {
  private final byte[] data;
  private final int from;
  private final int size;

  private Slice(byte[] data, int from, int size) {
    this.data = data;
    this.from = from;
    this.size = size;
  }

  static Slice of(byte[] data) {
    return new Slice(data, 0, data.length);
  }

  int size() {
    return size;
  }

  Slice slice(long position, long length) throws MediaException {
    need(position, length);
    return new Slice(data, from + (int) position, (int) length);
  }

  Slice from(long position) throws MediaException {
    return slice(position, size - position);
  }

  int u8(long position) throws MediaException {
    need(position, 1);
    return data[from + (int) position] & 0xff;
  }

  int u16(long position) throws MediaException {
    return u8(position) << 8 | u8(position + 1);
  }

  long u32(long position) throws MediaException {
    return (long) u16(position) << 16 | u16(position + 2);
  }

  /** Reads eight bytes that must be a number below 2^63. */
  long u64(long position) throws MediaException {
    var value = u32(position) << 32 | u32(position + 4);
    if (value < 0) {
      throw MediaException.broken("a 64-bit number in the file is larger than any file");
    }
    return value;
  }

  /** Reads a four-character code; anything unprintable becomes a question mark. */
  String fourcc(long position) throws MediaException {
    need(position, 4);
    var code = new StringBuilder(4);
    for (var i = 0; i < 4; i++) {
      var c = u8(position + i);
      code.append(c >= 0x20 && c < 0x7f || c == 0xa9 ? (char) c : '?');
    }
    return code.toString();
  }

  String ascii() {
    return new String(data, from, size, StandardCharsets.US_ASCII);
  }

  byte[] toBytes() {
    var copy = new byte[size];
    System.arraycopy(data, from, copy, 0, size);
    return copy;
  }

  private void need(long position, long length) throws MediaException {
    if (position < 0 || length < 0 || position > size || length > size - position) {
      throw MediaException.broken("a table in the file ends before its last entry");
    }
  }
}
