package org.lehrcase.core.glass.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.glass.CurvePoint;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.stress.KilnLeg;

/** The loss of a kiln from its meter. */
class MeterFitTest {
  private static final KilnPace PACE = new KilnPace(20, 5, 400);

  static LongStream seeds() {
    return Seeds.some(20);
  }

  private static CurvePoint at(double hours, double celsius) {
    return new CurvePoint(hours, celsius);
  }

  @Test
  void aHoldCountsWhatTheWallsLose() {
    // 2.5 W/K times 480 K for 8 h is 9.6 kWh
    List<CurvePoint> hold = List.of(at(0, 500), at(10, 500));
    List<MeterFit.Span> span = List.of(new MeterFit.Span(1, 9, 9.6));
    assertThat(MeterFit.lossWPerK(hold, span, PACE)).isCloseTo(2.5, within(1e-9));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aKilnIsFoundAgainFromTheEnergyThatItWouldUse(long seed) {
    var random = new SplittableRandom(seed);
    double loss = random.nextDouble(0.5, 8);
    var power = KilnPower.of(loss, PACE.coolingHours(), 1e6);
    List<CurvePoint> curve = new ArrayList<>(List.of(at(0, 20)));
    List<MeterFit.Span> spans = new ArrayList<>();
    double celsius = 20;
    double hours = 0;
    for (int line = 0; line < 6; line++) {
      double next = random.nextInt(3) == 0 ? celsius : random.nextDouble(60, 900);
      next = line == 0 ? 600 : next; // the elements work at least once
      double length = random.nextDouble(0.5, 30);
      curve.add(at(hours + length, next));
      spans.add(
          new MeterFit.Span(hours, hours + length, kilowattHours(power, celsius, next, length)));
      celsius = next;
      hours += length;
    }
    assertThat(MeterFit.lossWPerK(curve, spans, PACE))
        .isCloseTo(loss, Percentage.withPercentage(0.3));
  }

  /** What the other direction says: energy of a leg in a kiln whose loss is known. */
  private static double kilowattHours(KilnPower power, double fromC, double toC, double hours) {
    var setting =
        new EnergyUse.Setting(
            power,
            PACE.roomC(),
            ZonedDateTime.of(2026, 1, 1, 0, 0, 0, 0, ZoneOffset.UTC),
            Tariff.flat("", 0));
    return EnergyUse.of(List.of(KilnLeg.even(0, fromC, toC, hours * 3600)), setting)
        .kilowattHours();
  }

  @Test
  void nothingFollowsFromOneLookOrFromACoolingKiln() {
    List<CurvePoint> falling = List.of(at(0, 500), at(1, 100));
    assertThatThrownBy(() -> MeterFit.lossWPerK(falling, List.of(), PACE))
        .hasMessageContaining("read twice");
    List<MeterFit.Span> resting = List.of(new MeterFit.Span(0, 1, 0));
    assertThatThrownBy(() -> MeterFit.lossWPerK(falling, resting, PACE))
        .hasMessageContaining("elements work");
    List<CurvePoint> hold = List.of(at(0, 500), at(1, 500));
    assertThatThrownBy(() -> MeterFit.lossWPerK(hold, resting, PACE))
        .hasMessageContaining("did not move");
  }
}
