package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.Seeds;

/** From the length of a part file alone follows where its bytes lie. */
class SealedLengthTest {
  static LongStream seeds() {
    return Seeds.some(30);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theLengthOfAPartFileGivesItsLayoutBack(long seed) {
    var random = new SplittableRandom(seed);
    for (int i = 0; i < 100; i++) {
      int log2 = random.nextInt(16, 21);
      long most = SegmentLayout.maxPlainBytes(log2);
      var layout = new SegmentLayout(random.nextLong(most + 1) >>> random.nextInt(20), log2);
      assertThat(SegmentLayout.ofSealed(layout.sealedBytes(), log2)).isEqualTo(layout);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {16, 17, 18, 19, 20})
  void theBoundsOfASegmentAreExact(int log2) {
    int segment = 1 << log2;
    long full = 3L * segment;
    assertThat(SegmentLayout.ofSealed(full, log2).segments()).isEqualTo(3);
    assertThat(SegmentLayout.ofSealed(full + 17, log2).segments()).isEqualTo(4);
    for (int tagOnly = 1; tagOnly <= 16; tagOnly++) {
      long length = full + tagOnly;
      assertThatThrownBy(() -> SegmentLayout.ofSealed(length, log2))
          .as("%d over", tagOnly)
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Test
  void anEmptyPartIsBothHeadersAndATag() {
    assertThat(SegmentLayout.ofSealed(96, 16).plainBytes()).isZero();
    assertThat(SegmentLayout.ofSealed(97, 16).plainBytes()).isEqualTo(1);
  }

  @ParameterizedTest
  @ValueSource(longs = {Long.MIN_VALUE, -1, 0, 1, 80, 95, (1L << 30) + 1, Long.MAX_VALUE})
  void noPartIsShorterOrLonger(long sealedBytes) {
    assertThatThrownBy(() -> SegmentLayout.ofSealed(sealedBytes, 16))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void theLongestPartIsAGibibyte() {
    for (int log2 = 16; log2 <= 20; log2++) {
      assertThat(SegmentLayout.ofSealed(1L << 30, log2).plainBytes())
          .isEqualTo(SegmentLayout.maxPlainBytes(log2));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 0, 15, 21, 64})
  void aSegmentSizeOutOfRangeIsRefused(int log2) {
    assertThatThrownBy(() -> SegmentLayout.ofSealed(1000, log2))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
