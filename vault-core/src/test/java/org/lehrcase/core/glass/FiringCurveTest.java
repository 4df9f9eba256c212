package org.lehrcase.core.glass;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Hours of the five firings of the demo course, each sum worked out by hand beside it. */
class FiringCurveTest {

  private static final Offset<Double> SECOND = within(1.0 / 3600);

  /** tau = 3 h and room 20 °C: from 580 to 505 the kiln needs 3 ln(560/485) = 0.43142 h. */
  private static final KilnPace PACE = new KilnPace(20, 3, 500);

  private static FiringSchedule schedule(String... rows) {
    FiringSchedule schedule =
        FiringSchedule.parse(
            "step,rate_c_per_h,target_c,hold_min,note\n" + String.join("\n", rows));
    assertThat(schedule.problems()).isEmpty();
    return schedule;
  }

  @Test
  void colorStripsF1() {
    var f1 = schedule("1,200,580,10,", "2,free,505,15,", "3,200,370,0,", "4,,off,,");
    // 560/200 = 2.8; 10/60 = 0.16667; 0.43142; 15/60 = 0.25; 135/200 = 0.675
    assertThat(f1.controllerHours(20, PACE)).isCloseTo(4.32309, SECOND);
  }

  @Test
  void washF2() {
    var f2 = schedule("1,150,580,10,", "2,free,505,15,", "3,200,370,0,", "4,,off,,");
    // 560/150 = 3.73333; then as F1: 0.16667 + 0.43142 + 0.25 + 0.675 = 1.52309
    assertThat(f2.controllerHours(20, PACE)).isCloseTo(5.25642, SECOND);
  }

  @Test
  void kelpF3() {
    var f3 =
        schedule("1,120,450,15,", "2,200,590,8,", "3,free,505,15,", "4,200,370,0,", "5,,off,,");
    // 430/120 = 3.58333; 0.25; 140/200 = 0.7; 8/60 = 0.13333; 3 ln(570/485) = 0.48452; 0.25; 0.675
    assertThat(f3.controllerHours(20, PACE)).isCloseTo(6.07618, SECOND);
  }

  @Test
  void bedBakeOutF4HasNoFreeStretch() {
    var f4 = schedule("1,100,120,60,", "2,150,700,15,", "3,,off,,");
    // 100/100 = 1; 1; 580/150 = 3.86667; 0.25
    assertThat(f4.controllerHours(20, PACE)).isCloseTo(6.11667, SECOND);
    assertThat(f4.isEstimate()).isFalse();
  }

  @Test
  void blockF5LastsAboutFortyHours() {
    var f5 = f5();
    // 1 + 0.75 + 420/110 + 20/60 + 125/90 + 75/60 + 133/240 + 25/60 = 9.51124
    // 3 ln(778/485) = 1.41773; 5; 77/7 = 11; 55/12 = 4.58333; 328/38 = 8.63158
    assertThat(f5.controllerHours(20, PACE)).isCloseTo(40.14388, SECOND);
    assertThat(f5.controllerHours(20, PACE)).isCloseTo(40, within(1.0));
  }

  @Test
  void theCurvePassesEveryTargetAndHold() {
    List<CurvePoint> curve = schedule("1,100,120,60,", "2,150,700,15,").curve(20, PACE);
    assertThat(curve).hasSize(5);
    assertPoint(curve.get(0), 0, 20);
    assertPoint(curve.get(1), 1, 120);
    assertPoint(curve.get(2), 2, 120);
    assertPoint(curve.get(3), 5.86667, 700);
    assertPoint(curve.get(4), 6.11667, 700);
  }

  @Test
  void switchedOffTheKilnFallsByItselfToTheLidTemperature() {
    List<CurvePoint> curve = schedule("1,200,370,0,", "2,,off,,").curve(20, PACE);
    // 350/200 = 1.75; 3 ln(350/30) = 7.37021
    assertPoint(curve.get(curve.size() - 1), 9.12021, FiringSchedule.LID_C);
    // half way in time: 20 + 350 exp(-3.685105/3) = 20 + 102.4695
    assertPoint(curve.get(1 + 8), 1.75 + 7.37021 / 2, 122.4695);
  }

  @Test
  void freeHeatingIsAStraightLine() {
    List<CurvePoint> curve = schedule("1,free,520,0,").curve(20, PACE);
    assertThat(curve).hasSize(2);
    assertPoint(curve.get(1), 1, 520);
  }

  @Test
  void offInAColdKilnChangesNothing() {
    assertThat(schedule("1,,off,,").curve(20)).containsExactly(new CurvePoint(0, 20));
  }

  @Test
  void freeCoolingToTheRoomStillEnds() {
    FiringSchedule cold =
        FiringSchedule.parse("rate_c_per_h,target_c,hold_min\n200,420,0\nfree,20,0\n");
    // 400/200 = 2; taken as reached at 21: 3 ln(400/1) = 17.97440
    assertThat(cold.controllerHours(20, PACE)).isCloseTo(19.97440, SECOND);
  }

  @Test
  void aKilnNeverCoolsBelowItsRoomByItself() {
    assertThatThrownBy(() -> PACE.freeHours(500, 20)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new KilnPace(20, 0, 500)).isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new KilnPace(20, 3, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class);
  }

  static Stream<Long> seeds() {
    return Stream.iterate(1L, s -> s + 1).limit(200);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void timeNeverGoesBackAndTheCurveEndsWithTheController(long seed) {
    var random = new Random(seed);
    var rows = new StringBuilder("rate_c_per_h,target_c,hold_min\n");
    int steps = 1 + random.nextInt(8);
    for (int i = 0; i < steps; i++) {
      String rate = random.nextInt(4) == 0 ? "free" : String.valueOf(1 + random.nextInt(500));
      rows.append(rate).append(',').append(21 + random.nextInt(800)).append(',');
      rows.append(random.nextInt(300)).append('\n');
    }
    FiringSchedule schedule = FiringSchedule.parse(rows.toString());
    List<CurvePoint> curve = schedule.curve(20, PACE);
    for (int i = 1; i < curve.size(); i++) {
      assertThat(curve.get(i).hours()).isGreaterThanOrEqualTo(curve.get(i - 1).hours());
    }
    assertThat(curve.get(curve.size() - 1).hours())
        .isCloseTo(schedule.controllerHours(20, PACE), SECOND);
  }

  private static FiringSchedule f5() {
    return schedule(
        "1,100,120,45,",
        "2,110,540,20,",
        "3,90,665,75,",
        "4,240,798,25,",
        "5,free,505,5 h,",
        "6,7,428,0,",
        "7,12,373,0,",
        "8,38,45,0,");
  }

  private static void assertPoint(CurvePoint point, double hours, double celsius) {
    assertThat(point.hours()).isCloseTo(hours, within(0.001));
    assertThat(point.celsius()).isCloseTo(celsius, within(0.05));
  }
}
