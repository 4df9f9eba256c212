package org.lehrcase.core.seal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SegmentLayoutTest {
  @ParameterizedTest(name = "{0} clear bytes: {1} segments, {2} file bytes")
  @CsvSource({
    "0, 1, 96",
    "1, 1, 97",
    "65439, 1, 65535",
    "65440, 1, 65536",
    "65441, 2, 65553",
    "130959, 2, 131071",
    "130960, 2, 131072",
    "130961, 3, 131089",
  })
  void countsSegmentsAndBytesAtTheBounds(long plainBytes, int segments, long sealedBytes) {
    var layout = new SegmentLayout(plainBytes, 16);
    assertThat(layout.segments()).isEqualTo(segments);
    assertThat(layout.lastSegment()).isEqualTo(segments - 1);
    assertThat(layout.sealedBytes()).isEqualTo(sealedBytes);
  }

  @Test
  void firstSegmentIsShorterInsideByBothHeaders() {
    var layout = new SegmentLayout(200_000, 16);
    assertThat(layout.clearSize(0)).isEqualTo(65_536 - 96);
    assertThat(layout.clearSize(1)).isEqualTo(65_536 - 16);
    assertThat(layout.leadBytes(0)).isEqualTo(80);
    assertThat(layout.leadBytes(1)).isZero();
    assertThat(layout.clearStart(1)).isEqualTo(65_440);
    assertThat(layout.sealedStart(1)).isEqualTo(65_536);
  }

  @Test
  void emptyPartHasOneSegmentWithoutClearBytes() {
    var layout = new SegmentLayout(0, 20);
    assertThat(layout.clearSize(0)).isZero();
    assertThat(layout.sealedSize(0)).isEqualTo(96);
  }

  @ParameterizedTest(name = "segments of 2^{0}")
  @CsvSource({"16", "17", "18", "19", "20"})
  void longestPartFillsOneGibibyteExactly(int log2) {
    long most = SegmentLayout.maxPlainBytes(log2);
    assertThat(new SegmentLayout(most, log2).sealedBytes()).isEqualTo(1L << 30);
    assertThatThrownBy(() -> new SegmentLayout(most + 1, log2))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest(name = "{0} bytes in segments of 2^{1}")
  @CsvSource({"-1, 16", "0, 15", "0, 21", "0, 0", "0, -1", "0, 64", "9223372036854775807, 16"})
  void refusesSizesOutOfRange(long plainBytes, int log2) {
    assertThatThrownBy(() -> new SegmentLayout(plainBytes, log2))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
