package org.lehrcase.desk.media;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Parameter sets written bit by bit in the order of ITU-T H.264, 7.3.2.1.1. */
class InterlacingTest {
  private static final int BASELINE = 66;
  private static final int HIGH = 100;

  /** Writes bits and Exp-Golomb numbers. */
  private static final class Bits {
    private final StringBuilder bits = new StringBuilder();

    Bits raw(int value, int count) {
      for (int i = count - 1; i >= 0; i--) {
        bits.append(value >> i & 1);
      }
      return this;
    }

    Bits exp(int... values) {
      for (int value : values) {
        int length = 32 - Integer.numberOfLeadingZeros(value + 1);
        bits.append("0".repeat(length - 1));
        raw(value + 1, length);
      }
      return this;
    }

    byte[] bytes() {
      String padded = bits + "1" + "0".repeat(24);
      byte[] out = new byte[(bits.length() + 8) / 8 + 2];
      for (int i = 0; i < out.length; i++) {
        out[i] = (byte) Integer.parseInt(padded.substring(8 * i, 8 * i + 8), 2);
      }
      return out;
    }
  }

  private static Bits head(int profile) {
    return new Bits().raw(0x67, 8).raw(profile, 8).raw(0, 8).raw(31, 8).exp(0);
  }

  /** Frame numbers, order type 0, references, gaps, size, and the flag in question. */
  private static Bits tail(Bits set, int framesOnly) {
    return set.exp(0, 0, 2, 4).raw(0, 1).exp(79, 44).raw(framesOnly, 1);
  }

  private static PictureFormat format(int profile, Bits set) throws MediaException {
    byte[] bytes = set.bytes();
    byte[] record = new byte[8 + bytes.length];
    record[0] = 1;
    record[1] = (byte) profile;
    record[3] = 31;
    record[4] = (byte) 0xff;
    record[5] = (byte) 0xe1;
    record[7] = (byte) bytes.length;
    System.arraycopy(bytes, 0, record, 8, bytes.length);
    return new AvcConfig(Slice.of(record)).format(1280, 720);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1})
  void theFlagOfABaselineSetIsRead(int framesOnly) throws MediaException {
    PictureFormat format = format(BASELINE, tail(head(BASELINE), framesOnly));
    assertThat(format.interlaced()).isEqualTo(framesOnly == 0);
    assertThat(format.bitDepth()).isEqualTo(8);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, 1})
  void theFlagOfAHighSetIsReadBehindItsChroma(int framesOnly) throws MediaException {
    Bits set = head(HIGH).exp(1, 0, 0).raw(0, 1).raw(0, 1);
    PictureFormat format = format(HIGH, tail(set, framesOnly));
    assertThat(format.interlaced()).isEqualTo(framesOnly == 0);
    assertThat(format.chroma()).isEqualTo(Chroma.HALF);
  }

  @Test
  void scalingListsArePassedOver() throws MediaException {
    Bits set = head(HIGH).exp(1, 0, 0).raw(0, 1).raw(1, 1);
    set.raw(1, 1).exp(16); // the first list: delta -8, so that it ends at once
    set.raw(1, 1); // the second: sixteen deltas of 0
    for (int i = 0; i < 16; i++) {
      set.exp(0);
    }
    set.raw(0, 6); // the other six are not there
    assertThat(format(HIGH, tail(set, 0)).interlaced()).isTrue();
  }

  @Test
  void theOrderOfTypeOneIsPassedOver() throws MediaException {
    Bits set = head(BASELINE).exp(0, 1).raw(0, 1).exp(70_000, 3).exp(2, 5, 6);
    set.exp(4).raw(0, 1).exp(79, 44).raw(0, 1);
    assertThat(format(BASELINE, set).interlaced()).isTrue();
  }

  @Test
  void aSetThatEndsEarlyIsBroken() {
    byte[] short8 = {1, BASELINE, 0, 31, (byte) 0xff, (byte) 0xe1, 0, 2, 0x67, 0x42};
    assertThatThrownBy(() -> new AvcConfig(Slice.of(short8)).format(1280, 720))
        .isInstanceOf(MediaException.class);
  }
}
