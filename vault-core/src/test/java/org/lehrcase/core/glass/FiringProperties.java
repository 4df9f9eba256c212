package org.lehrcase.core.glass;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Schedules in either unit, of any shape, drawn by a slow model beside ours. */
class FiringProperties {
  static LongStream seeds() {
    return Seeds.some(60);
  }

  private record Step(int rateC, int targetC, int holdMinutes) {}

  private static List<Step> steps(SplittableRandom random) {
    return random
        .ints(random.nextInt(1, 9), 30, 900)
        .mapToObj(target -> new Step(random.nextInt(20, 500), target, random.nextInt(1, 300)))
        .toList();
  }

  private static String celsius(List<Step> steps) {
    var text = new StringBuilder("step,rate_c_per_h,target_c,hold_min,note\n");
    steps.forEach(
        s ->
            text.append(
                String.format(
                    Locale.ROOT, ",%d,%d,%d,\n", s.rateC(), s.targetC(), s.holdMinutes())));
    return text.toString();
  }

  private static String fahrenheit(List<Step> steps) {
    var text = new StringBuilder("step;rate_f_per_h;target_f;hold_min;note\n");
    steps.forEach(
        s ->
            text.append(
                String.format(
                        Locale.ROOT,
                        ";%.1f;%.1f;%d;\n",
                        s.rateC() * 1.8,
                        s.targetC() * 1.8 + 32,
                        s.holdMinutes())
                    .replace('.', ',')));
    return text.toString();
  }

  /** Hours of a schedule of ramps, step by step. */
  private static double hours(List<Step> steps, double startC) {
    double hours = 0;
    double from = startC;
    for (Step step : steps) {
      hours += Math.abs(step.targetC() - from) / step.rateC() + step.holdMinutes() / 60.0;
      from = step.targetC();
    }
    return hours;
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theTimeIsThatOfItsRampsAndHolds(long seed) {
    var random = new SplittableRandom(seed);
    List<Step> steps = steps(random);
    FiringSchedule schedule = FiringSchedule.parse(celsius(steps));
    assertThat(schedule.problems()).isEmpty();
    assertThat(schedule.isEstimate()).isFalse();
    double startC = random.nextInt(10, 40);
    assertThat(schedule.controllerHours(startC, KilnPace.ASSUMED))
        .isCloseTo(hours(steps, startC), within(1e-9));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void bothUnitsDrawTheSameCurve(long seed) {
    List<Step> steps = steps(new SplittableRandom(seed));
    FiringSchedule inC = FiringSchedule.parse(celsius(steps));
    FiringSchedule inF = FiringSchedule.parse(fahrenheit(steps));
    assertThat(inF.unit()).isEqualTo(TemperatureUnit.FAHRENHEIT);
    assertThat(inF.problems()).isEmpty();
    List<CurvePoint> one = inC.curve(20);
    List<CurvePoint> two = inF.curve(20);
    assertThat(two).hasSameSizeAs(one);
    for (int i = 0; i < one.size(); i++) {
      assertThat(two.get(i).hours()).isCloseTo(one.get(i).hours(), within(0.001));
      assertThat(two.get(i).celsius()).isCloseTo(one.get(i).celsius(), within(0.001));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theCurveReachesEveryTargetInOrder(long seed) {
    List<Step> steps = steps(new SplittableRandom(seed));
    List<CurvePoint> curve = FiringSchedule.parse(celsius(steps)).curve(20);
    int at = 0;
    for (Step step : steps) {
      while (at < curve.size() && Math.abs(curve.get(at).celsius() - step.targetC()) > 1e-9) {
        at++;
      }
      assertThat(at).as("target %d", step.targetC()).isLessThan(curve.size());
    }
    assertThat(curve).isSortedAccordingTo((a, b) -> Double.compare(a.hours(), b.hours()));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void temperaturesAndRatesComeBackFromEitherUnit(long seed) {
    var random = new SplittableRandom(seed);
    double value = random.nextDouble(-50, 1200);
    for (TemperatureUnit unit : TemperatureUnit.values()) {
      assertThat(unit.ofCelsius(unit.toCelsius(value))).isCloseTo(value, within(1e-9));
      assertThat(unit.rateOfCelsius(unit.rateToCelsius(value))).isCloseTo(value, within(1e-9));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void freeCoolingTakesAsLongAsItTakes(long seed) {
    var random = new SplittableRandom(seed);
    KilnPace pace = new KilnPace(20, random.nextDouble(0.5, 9), random.nextDouble(50, 900));
    double from = random.nextDouble(100, 900);
    double to = random.nextDouble(25, from);
    double hours = pace.freeHours(from, to);
    assertThat(hours).isNotNegative();
    assertThat(pace.cooledC(from, hours)).isCloseTo(to, within(1e-6));
    assertThat(pace.cooledC(from, hours / 2)).isBetween(to, from);
    assertThat(pace.freeHours(to, from))
        .isCloseTo((from - to) / pace.heatingCPerHour(), within(1e-9));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void anyRowsAreReadOrReportedAndCanBeDrawn(long seed) {
    var random = new SplittableRandom(seed);
    String[] words = {
      "", "free", "off", "100", "-5", "1e9", "2000", "5 h", "30min", "x", "0", "20"
    };
    var text = new StringBuilder("step,rate_c_per_h,target_c,hold_min,note\n");
    for (int i = 0; i < 12; i++) {
      for (int column = 0; column < 5; column++) {
        text.append(words[random.nextInt(words.length)]).append(column < 4 ? "," : "\n");
      }
    }
    FiringSchedule schedule = FiringSchedule.parse(text.toString());
    assertThatCode(() -> schedule.curve(20)).doesNotThrowAnyException();
    assertThat(schedule.curve(20))
        .allMatch(p -> Double.isFinite(p.hours()) && Double.isFinite(p.celsius()));
    assertThat(schedule.problems()).allMatch(p -> p.line() >= 0 && p.line() <= 13);
  }
}
