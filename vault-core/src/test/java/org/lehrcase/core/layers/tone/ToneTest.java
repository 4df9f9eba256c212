package org.lehrcase.core.layers.tone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Turning and toning the reference picture. */
class ToneTest {
  /**
   * Where the stored corner pixel of the letter F's upper left ends, as the drawings of the manual
   * of jpegexiforient show them; from memory.
   */
  @ParameterizedTest
  @CsvSource({"1,0,0", "2,2,0", "3,2,4", "4,0,4", "5,0,0", "6,4,0", "7,4,2", "8,0,2"})
  void theFirstStoredPixelOfThreeByFiveGoesToItsCorner(int tag, int x, int y) {
    var upright = new Upright(tag);
    assertThat(upright.x(0, 0, 3, 5)).isEqualTo(x);
    assertThat(upright.y(0, 0, 3, 5)).isEqualTo(y);
  }

  @ParameterizedTest
  @CsvSource({"1", "2", "3", "4", "5", "6", "7", "8"})
  void everyPixelKeepsAPlaceOfItsOwn(int tag) {
    var upright = new Upright(tag);
    Set<Integer> places = new HashSet<>();
    for (int x = 0; x < 3; x++) {
      for (int y = 0; y < 5; y++) {
        int toX = upright.x(x, y, 3, 5);
        int toY = upright.y(x, y, 3, 5);
        assertThat(toX).isBetween(0, upright.swaps() ? 4 : 2);
        assertThat(toY).isBetween(0, upright.swaps() ? 2 : 4);
        places.add(10 * toX + toY);
      }
    }
    assertThat(places).hasSize(15);
    assertThatThrownBy(() -> new Upright(9)).hasMessageContaining("1 to 8");
  }

  @Test
  void lightnessFollowsTheEye() {
    assertThat(ValueStudy.bin(0, 0, 0)).isZero();
    assertThat(ValueStudy.bin(255, 255, 255)).isEqualTo(255);
    assertThat(ValueStudy.bin(119, 119, 119)).isCloseTo(127, within(2)); // L* = 50, from memory
    assertThat(ValueStudy.bin(0, 255, 0)).isGreaterThan(ValueStudy.bin(255, 0, 0));
  }

  @Test
  void fewerTonesFartherBack() {
    assertThat(ValueStudy.tones(1, 4)).isEqualTo(5);
    assertThat(ValueStudy.tones(4, 4)).isEqualTo(2);
    assertThat(ValueStudy.tones(1, 1)).isEqualTo(5);
  }

  @Test
  void threeHumpsAreParted() {
    long[] counts = new long[16];
    counts[2] = 4;
    counts[3] = 4;
    counts[8] = 6;
    counts[13] = 1;
    counts[14] = 1;
    ValueStudy study = ValueStudy.of(counts, 3);
    assertThat(study.thresholds()).containsExactly(8, 13);
    assertThat(study.spread()).isCloseTo(2.5, within(1e-9)); // 8·¼ + 2·¼, by hand
    assertThat(study.means()).containsExactly(2.5, 8.0, 13.5);
    assertThat(study.tone(7)).isZero();
    assertThat(study.tone(13)).isEqualTo(2);
    assertThat(ValueStudy.of(counts, 9).means()).hasSize(5);
    assertThatThrownBy(() -> ValueStudy.of(new long[4], 2)).hasMessageContaining("pixels");
  }

  static LongStream seeds() {
    return Seeds.some(60);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void noOtherPairOfThresholdsIsBetter(long seed) {
    var random = new SplittableRandom(seed);
    long[] counts = random.longs(20, 0, 50).toArray();
    counts[0] = 1;
    counts[10] = 1;
    counts[19] = 1;
    double least = Double.POSITIVE_INFINITY;
    for (int a = 1; a < 19; a++) {
      for (int b = a + 1; b < 20; b++) {
        least =
            Math.min(
                least,
                deviation(counts, 0, a) + deviation(counts, a, b) + deviation(counts, b, 20));
      }
    }
    assertThat(ValueStudy.of(counts, 3).spread()).isCloseTo(least, within(1e-6));
  }

  private static double deviation(long[] counts, int from, int to) {
    double weight = 0;
    double mean = 0;
    for (int i = from; i < to; i++) {
      weight += counts[i];
      mean += counts[i] * (double) i;
    }
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += weight == 0 ? 0 : counts[i] * Math.pow(i - mean / weight, 2);
    }
    return sum;
  }
}
