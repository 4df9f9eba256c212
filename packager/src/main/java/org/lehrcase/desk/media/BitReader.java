package org.lehrcase.desk.media;

/** Reads single bits and Exp-Golomb numbers (ITU-T H.264, 9.1) from a window of bytes. */
final class BitReader {
  private final Slice bytes;
  private long position;

  BitReader(Slice bytes) {
    this.bytes = bytes;
  }

  int bit() throws MediaException {
    var value = bytes.u8(position / 8) >> (7 - (int) (position % 8)) & 1;
    position++;
    return value;
  }

  /** Reads an unsigned number of at most 31 bits. */
  int bits(int count) throws MediaException {
    var value = 0;
    for (var i = 0; i < count; i++) {
      value = value << 1 | bit();
    }
    return value;
  }

  /** Reads {@code ue(v)}; more than 16 leading zeros mean damage for every field read here. */
  int exp() throws MediaException {
    var zeros = 0;
    while (bit() == 0) {
      if (++zeros > 16) {
        throw MediaException.broken("a picture header in the file makes no sense");
      }
    }
    return (1 << zeros) - 1 + bits(zeros);
  }

  /** Passes over {@code ue(v)} or {@code se(v)} of up to 32 bits. */
  void longExp() throws MediaException {
    var zeros = 0;
    while (bit() == 0) {
      if (++zeros > 32) {
        throw MediaException.broken("a picture header in the file makes no sense");
      }
    }
    position += zeros;
  }
}
