package org.lehrcase.core.layers.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Rows cut into runs. */
class RunPartitionTest {
  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  @Test
  void fourValuesInTwoRuns() {
    // the example of Jenks's natural breaks on Wikipedia; from memory, and by hand
    var row = RunPartition.of(new double[] {4, 5, 9, 10}, ones(4), 2);
    assertThat(row.spread(1)).isEqualTo(26);
    assertThat(row.spread(2)).isEqualTo(1);
    assertThat(row.runs(2)).containsExactly(1, 1, 2, 2);
    assertThat(1 - row.spread(2) / row.spread(1)).isCloseTo(25.0 / 26, within(1e-12));
  }

  @Test
  void tenValuesInThreeRuns() {
    // a test of the JavaScript library simple-statistics, from memory
    double[] sorted = {-1, -1, -1, -1, 2, 2, 2, 4, 5, 6};
    var row = RunPartition.of(sorted, ones(10), 3);
    assertThat(row.spread(3)).isCloseTo(2, within(1e-9));
    assertThat(row.runs(3)).containsExactly(1, 1, 1, 1, 2, 2, 2, 3, 3, 3);
  }

  @Test
  void nearlyEqualValuesFarFromZeroKeepTheirDigits() {
    double[] row = {1e6, 1e6 + 1e-3, 1e6 + 3e-3};
    assertThat(RunPartition.of(row, ones(3), 2).spread(2)).isCloseTo(5e-7, within(1e-9));
  }

  @Test
  void aRowNeedsWeightsAndARun() {
    assertThatThrownBy(() -> RunPartition.of(new double[0], new double[0], 1))
        .hasMessageContaining("weights");
    assertThatThrownBy(() -> RunPartition.of(new double[1], ones(1), 0))
        .hasMessageContaining("run");
  }

  static LongStream seeds() {
    return Seeds.some(100);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void noOtherCutsAreBetter(long seed) {
    var random = new SplittableRandom(seed);
    int n = random.nextInt(1, 10);
    double[] z = random.doubles(n, 0, 5).sorted().toArray();
    double[] w = random.doubles(n, 0.5, 3).toArray();
    int runs = random.nextInt(1, 5);
    double least = Double.POSITIVE_INFINITY;
    for (int cuts = 0; cuts < 1 << n - 1; cuts++) {
      if (Integer.bitCount(cuts) < runs) {
        least = Math.min(least, spread(z, w, cuts));
      }
    }
    var row = RunPartition.of(z, w, runs);
    assertThat(row.spread(runs)).isCloseTo(least, within(1e-9));
    assertThat(Arrays.stream(row.runs(runs)).distinct().count()).isEqualTo(Math.min(n, runs));
  }

  private static double spread(double[] z, double[] w, int cuts) {
    double sum = 0;
    int start = 0;
    for (int end = 1; end <= z.length; end++) {
      if (end == z.length || (cuts >> end - 1 & 1) == 1) {
        double weight = 0;
        double mean = 0;
        for (int i = start; i < end; i++) {
          weight += w[i];
          mean += w[i] * z[i];
        }
        for (int i = start; i < end; i++) {
          sum += w[i] * Math.pow(z[i] - mean / weight, 2);
        }
        start = end;
      }
    }
    return sum;
  }
}
