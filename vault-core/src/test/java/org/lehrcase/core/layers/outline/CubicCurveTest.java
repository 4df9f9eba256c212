package org.lehrcase.core.layers.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Curves of outlines. */
class CubicCurveTest {
  static LongStream seeds() {
    return Seeds.some(100);
  }

  private static CubicCurve random(SplittableRandom random) {
    Point[] p = new Point[4];
    for (int i = 0; i < 4; i++) {
      p[i] = new Point(random.nextDouble(0, 200), random.nextDouble(0, 200));
    }
    return new CubicCurve(p[0], p[1], p[2], p[3]);
  }

  @Test
  void aQuarterCircleIsRoundToThreeParts() {
    double k = CubicCurve.CIRCLE_HANDLE;
    assertThat(k).isCloseTo(0.5522847498, within(1e-9)); // 4/3 (√2 − 1)
    var quarter =
        new CubicCurve(new Point(1, 0), new Point(1, k), new Point(k, 1), new Point(0, 1));
    double worst = 0;
    for (double t = 0; t <= 1; t += 0.0001) {
      worst = Math.max(worst, Math.hypot(quarter.at(t).xMm(), quarter.at(t).yMm()) - 1);
    }
    assertThat(worst).isCloseTo(2.7253e-4, within(1e-7)); // known error of this handle
  }

  @Test
  void theBoxIsTighterThanItsHandles() {
    var arch = new CubicCurve(new Point(0, 0), new Point(0, 1), new Point(1, 1), new Point(1, 0));
    assertThat(arch.extremesMm()).containsExactly(new double[] {0, 0, 1, 0.75}, within(1e-9));
  }

  @Test
  void oneHandleIsAsGoodAsTwo() {
    var curve = CubicCurve.ofQuadratic(new Point(0, 0), new Point(4, 8), new Point(10, 2));
    // (1−t)²·P0 + 2t(1−t)·P1 + t²·P2 at one half, by hand
    assertThat(curve.at(0.5).xMm()).isCloseTo(4.5, within(1e-12));
    assertThat(curve.at(0.5).yMm()).isCloseTo(4.5, within(1e-12));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void noPointLiesOutsideTheBoxAndEverySideIsTouched(long seed) {
    CubicCurve curve = random(new SplittableRandom(seed));
    double[] box = curve.extremesMm();
    double[] seen = {1e9, 1e9, -1e9, -1e9};
    for (int i = 0; i <= 20000; i++) {
      Point p = curve.at(i / 20000.0);
      seen[0] = Math.min(seen[0], p.xMm());
      seen[1] = Math.min(seen[1], p.yMm());
      seen[2] = Math.max(seen[2], p.xMm());
      seen[3] = Math.max(seen[3], p.yMm());
    }
    assertThat(box).containsExactly(seen, within(1e-4));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void flatPiecesStayCloseToTheCurve(long seed) {
    CubicCurve curve = random(new SplittableRandom(seed));
    List<Point> flat = curve.flattened(0.05);
    assertThat(flat.get(flat.size() - 1)).isEqualTo(curve.end());
    int n = flat.size();
    for (int i = 0; i < n; i++) {
      Point from = i == 0 ? curve.start() : flat.get(i - 1);
      for (double share = 0.05; share < 1; share += 0.05) {
        Point on = curve.at((i + share) / n);
        double x = from.xMm() + share * (flat.get(i).xMm() - from.xMm());
        double y = from.yMm() + share * (flat.get(i).yMm() - from.yMm());
        assertThat(Math.hypot(on.xMm() - x, on.yMm() - y)).isLessThan(0.0501);
      }
    }
  }
}
