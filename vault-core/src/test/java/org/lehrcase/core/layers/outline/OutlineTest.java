package org.lehrcase.core.layers.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Outlines and what they share. */
class OutlineTest {
  private static Outline outline(double... xy) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < xy.length; i += 2) {
      points.add(new Point(xy[i], xy[i + 1]));
    }
    return Outline.of(points);
  }

  private static Outline box(double x0, double y0, double x1, double y1) {
    return Outline.ofBox(new Box(x0, y0, x1, y1));
  }

  @Test
  void touchingBoxesDoNotOverlap() {
    assertThat(Overlap.exists(box(0, 0, 10, 10), box(10, 0, 20, 10))).isFalse();
    assertThat(Overlap.exists(box(0, 0, 10, 10), box(10, 10, 20, 20))).isFalse();
    assertThat(Overlap.areaMm2(box(0, 0, 10, 10), box(9, 8, 20, 20))).isEqualTo(2);
    assertThat(new Box(0, 0, 10, 10).overlaps(new Box(11, 0, 12, 9), 2)).isTrue();
  }

  @Test
  void boxesOverReportWhatOutlinesKnow() {
    Outline slope = outline(0, 0, 10, 10, 0, 10);
    Outline corner = outline(5, 0, 10, 0, 10, 4);
    assertThat(slope.box().overlaps(corner.box(), 0)).isTrue();
    assertThat(Overlap.exists(slope, corner)).isFalse();
    assertThat(Overlap.exists(slope, slope)).isTrue();
  }

  @Test
  void aCrossHasFourArmsOutsideTheOther() {
    // by hand: two bars of 30 by 10 share 10 by 10
    assertThat(Overlap.areaMm2(box(0, 10, 30, 20), box(10, 0, 20, 30))).isEqualTo(100);
    Outline ring = outline(0, 0, 9, 0, 9, 9, 6, 9, 6, 3, 3, 3, 3, 9, 0, 9);
    assertThat(Overlap.areaMm2(ring, box(0, 5, 9, 7))).isCloseTo(12, within(1e-9));
  }

  @Test
  void uselessOutlinesAreRefused() {
    assertThatThrownBy(() -> outline(0, 0, 10, 10, 10, 0, 0, 10)).hasMessageContaining("inside");
    assertThatThrownBy(() -> outline(0, 0, 20, 0, 20, 20, 10, -5)).hasMessageContaining("crosses");
    assertThatThrownBy(() -> outline(0, 0, 10, 10, 20, 20)).hasMessageContaining("inside");
    assertThatThrownBy(() -> outline(0, 0, 10, 10)).hasMessageContaining("3 to 1000");
    assertThatThrownBy(() -> new Point(Double.NaN, 0)).hasMessageContaining("100 m");
    assertThatThrownBy(() -> new Box(1, 1, 1, 2)).hasMessageContaining("width");
  }

  static LongStream seeds() {
    return Seeds.some(100);
  }

  /** A star: corners at growing angles never make a line cross itself. */
  private static Outline star(SplittableRandom random) {
    List<Point> points = new ArrayList<>();
    int n = random.nextInt(3, 12);
    double x = random.nextDouble(40, 60);
    double y = random.nextDouble(40, 60);
    for (int i = 0; i < n; i++) {
      double angle = 2 * Math.PI * (i + random.nextDouble(0, 0.9)) / n;
      double radius = random.nextDouble(5, 40);
      points.add(new Point(x + radius * Math.cos(angle), y + radius * Math.sin(angle)));
    }
    if (random.nextBoolean()) {
      Collections.reverse(points);
    }
    return Outline.of(points);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theSharedAreaIsWhatAFineGridCounts(long seed) {
    var random = new SplittableRandom(seed);
    Outline one = star(random);
    Outline two = star(random);
    double step = 0.25;
    int both = 0;
    int first = 0;
    for (double x = step / 2; x < 100; x += step) {
      for (double y = step / 2; y < 100; y += step) {
        boolean in = inside(one, x, y);
        first += in ? 1 : 0;
        both += in && inside(two, x, y) ? 1 : 0;
      }
    }
    assertThat(one.areaMm2()).isCloseTo(first * step * step, within(20.0));
    assertThat(Overlap.areaMm2(one, two)).isCloseTo(both * step * step, within(20.0));
    assertThat(Overlap.areaMm2(two, one)).isCloseTo(Overlap.areaMm2(one, two), within(1e-6));
    assertThat(Overlap.areaMm2(one, one)).isCloseTo(one.areaMm2(), within(1e-6));
  }

  private static boolean inside(Outline outline, double x, double y) {
    boolean in = false;
    List<Point> p = outline.points();
    for (int i = 0; i < p.size(); i++) {
      Point a = p.get(i);
      Point b = p.get((i + 1) % p.size());
      boolean spans = a.yMm() > y != b.yMm() > y;
      if (spans && x < a.xMm() + (y - a.yMm()) / (b.yMm() - a.yMm()) * (b.xMm() - a.xMm())) {
        in = !in;
      }
    }
    return in;
  }
}
