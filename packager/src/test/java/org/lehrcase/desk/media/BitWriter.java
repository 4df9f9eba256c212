package org.lehrcase.desk.media;

import java.io.ByteArrayOutputStream;

/** Writes bits and Exp-Golomb numbers, as ITU-T H.264, 9.1 defines them. */
final class BitWriter {
  private final StringBuilder bits = new StringBuilder();

  BitWriter bits(int value, int count) {
    for (int i = count - 1; i >= 0; i--) {
      bits.append(value >> i & 1);
    }
    return this;
  }

  /** Writes {@code ue(v)}: as many zeros as the number plus one has digits after its first. */
  BitWriter exp(int value) {
    String digits = Integer.toBinaryString(value + 1);
    bits.append("0".repeat(digits.length() - 1)).append(digits);
    return this;
  }

  byte[] toBytes() {
    StringBuilder padded = new StringBuilder(bits);
    while (padded.length() % 8 != 0) {
      padded.append('0');
    }
    var out = new ByteArrayOutputStream();
    for (int i = 0; i < padded.length(); i += 8) {
      out.write(Integer.parseInt(padded.substring(i, i + 8), 2));
    }
    return out.toByteArray();
  }
}
