package org.lehrcase.core.glass.stress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.KilnPace;

class KilnPathTest {
  private static final KilnPace PACE = new KilnPace(20, 4, 300);
  private static final KilnPath.End COLD = new KilnPath.End(50, 0, false);

  private static FiringSegment line(double rate, double target, double hold) {
    OptionalDouble perHour = rate > 0 ? OptionalDouble.of(rate) : OptionalDouble.empty();
    return new FiringSegment("x", perHour, OptionalDouble.of(target), hold, "");
  }

  private static FiringSegment off() {
    return new FiringSegment("x", OptionalDouble.empty(), OptionalDouble.empty(), 0, "");
  }

  private static KilnPath.Path path(KilnPath.End end, FiringSegment... lines) {
    return KilnPath.of(List.of(lines), PACE, 20, end);
  }

  @Test
  void aRampAndAHoldTakeTheirTime() {
    KilnPath.Path path = path(COLD, line(100, 520, 30), line(50, 50, 0));
    KilnPath.LineTime first = path.times().get(0);
    assertThat(first.arrivalHours()).isCloseTo(5, within(1e-9));
    assertThat(first.endHours()).isCloseTo(5.5, within(1e-9));
    assertThat(first.endC()).isEqualTo(520);
  }

  @Test
  void noKilnHeatsFasterThanItCan() {
    assertThat(path(COLD, line(900, 620, 0)).times().get(0).arrivalHours())
        .isCloseTo(2, within(1e-9));
  }

  @Test
  void belowItsOwnPaceTheKilnTakesOver() {
    // 100 K/h is held down to 20 + 100 x 4 = 420, then 4 ln(400/80)
    KilnPath.Path path =
        path(new KilnPath.End(100, 0, false), line(300, 620, 0), line(100, 100, 0));
    KilnPath.LineTime down = path.times().get(1);
    assertThat(down.endHours() - down.startHours()).isCloseTo(2 + 4 * Math.log(5), within(1e-9));
    assertThat(path.legs()).hasSize(3);
    assertThat(path.legs().get(2).exchange()).isPresent();
  }

  @Test
  void aKilnThatHoldsEveryRateNeedsOnlyTheSum() {
    KilnPath.Path path = path(new KilnPath.End(50, 0, true), line(900, 620, 0), line(100, 50, 0));
    assertThat(path.hours()).isCloseTo(600 / 900.0 + 5.7, within(1e-9));
  }

  @Test
  void freeCoolingIsNewtons() {
    KilnPath.Path path = path(COLD, line(300, 620, 0), line(0, 320, 60), off());
    KilnPath.LineTime soak = path.times().get(1);
    assertThat(soak.arrivalHours() - soak.startHours())
        .isCloseTo(4 * Math.log(600.0 / 300), within(1e-9));
    assertThat(soak.endHours() - soak.arrivalHours()).isCloseTo(1, within(1e-9));
    assertThat(path.times().get(2).endC()).isEqualTo(50);
  }

  @Test
  void aHotEndIsFollowedByTheKilnsOwnCooling() {
    KilnPath.Path path = path(COLD, line(300, 620, 0));
    assertThat(path.times()).hasSize(2);
    assertThat(path.times().get(1).endC()).isCloseTo(50, within(1e-9));
  }

  @Test
  void theCoreIsWaitedForAtTheLid() {
    double without = path(COLD, line(100, 320, 0)).hours();
    double with = path(new KilnPath.End(50, 1.5, false), line(100, 320, 0)).hours();
    assertThat(with - without).isCloseTo(1.5, within(1e-9));
  }

  @Test
  void aTargetAtTheRoomIsNeverQuiteReached() {
    KilnPath.Path path = path(new KilnPath.End(20, 0, false), line(100, 220, 0), line(0, 20, 0));
    assertThat(path.times().get(1).endC()).isCloseTo(21, within(1e-9));
  }

  @Test
  void aLegTakesTimeAndIsMadeOfNumbers() {
    assertThatThrownBy(() -> KilnLeg.even(0, 20, 20, 0))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> KilnLeg.even(0, Double.NaN, 20, 1))
        .isInstanceOf(IllegalArgumentException.class);
  }

  static LongStream seeds() {
    return Seeds.some(40);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theCurveHasNoJumpsAndTimeOnlyGrows(long seed) {
    var random = new SplittableRandom(seed);
    List<FiringSegment> lines = new ArrayList<>();
    for (int i = 0; i < random.nextInt(1, 9); i++) {
      double rate = random.nextInt(4) == 0 ? 0 : random.nextDouble(1, 600);
      lines.add(line(rate, random.nextDouble(25, 850), random.nextInt(0, 200)));
    }
    var end =
        new KilnPath.End(random.nextDouble(30, 60), random.nextInt(0, 3), random.nextBoolean());
    KilnPath.Path path = KilnPath.of(lines, PACE, 20, end);
    double at = 20;
    double seconds = 0;
    for (KilnLeg leg : path.legs()) {
      assertThat(leg.fromC()).isCloseTo(at, within(1e-6));
      assertThat(leg.celsiusAt(0)).isCloseTo(leg.fromC(), within(1e-6));
      assertThat(leg.celsiusAt(leg.seconds())).isCloseTo(leg.toC(), within(1e-6));
      at = leg.toC();
      seconds += leg.seconds();
    }
    assertThat(seconds / 3600).isCloseTo(path.hours(), within(1e-6));
    for (KilnPath.LineTime time : path.times()) {
      assertThat(time.arrivalHours()).isBetween(time.startHours(), time.endHours());
    }
  }
}
