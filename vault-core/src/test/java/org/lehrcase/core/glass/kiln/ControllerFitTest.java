package org.lehrcase.core.glass.kiln;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.plan.Block;
import org.lehrcase.core.glass.plan.FiringPlan;
import org.lehrcase.core.glass.plan.FiringPlanner;
import org.lehrcase.core.glass.plan.PlanWish;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.plan.Stage;

class ControllerFitTest {
  private static FiringPlan plan(double mm) {
    var glass = GlassKinds.byId("coe-90").orElseThrow();
    return FiringPlanner.plan(PlanWish.usual(glass, Block.of(mm, Faces.ONE, false)));
  }

  private static Controller controller(TemperatureUnit unit, int lines, double longestHold) {
    return new Controller(unit, unit.ofCelsius(900), 1, 999, 1, lines, longestHold, "FULL");
  }

  private static FittedPlan fit(double mm, Controller controller) {
    return ControllerFit.fit(plan(mm).segments(), controller, KilnPace.ASSUMED);
  }

  private static PlannedSegment first(FittedPlan fitted, Stage stage) {
    return fitted.lines().stream().filter(l -> l.stage() == stage).findFirst().orElseThrow();
  }

  @Test
  void ratesGoDownToWholeDegreesAndHoldsUpToMinutes() {
    FittedPlan fitted = fit(21, Controller.ORDINARY);
    // 9335 / 42² = 5.29 per hour
    assertThat(first(fitted, Stage.SLOPE_1).segment().rateCPerHour()).hasValue(5);
    assertThat(fitted.typed()).hasSize(8);
    assertThat(fitted.typed().get(5).rate()).isEqualTo("5");
    assertThat(fitted.typed().get(4).rate()).isEqualTo("999");
    assertThat(fitted.typed().get(4).hold()).matches("\\d+:\\d\\d");
  }

  @Test
  void fahrenheitRoundsAfterConversionAndRatesHaveNoZeroPoint() {
    FittedPlan fitted = fit(21, controller(TemperatureUnit.FAHRENHEIT, 8, 6000));
    // 5.29 x 1.8 = 9.5, so 9 °F/h = 5 °C/h; 503 °C = 937.4 °F, the soak goes up to 938
    assertThat(fitted.typed().get(5).rate()).isEqualTo("9");
    assertThat(first(fitted, Stage.SLOPE_1).segment().rateCPerHour().orElseThrow())
        .isCloseTo(5.0, within(1e-9));
    assertThat(fitted.typed().get(4).target()).isEqualTo("938");
    assertThat(fitted.typed().get(4).rate()).isEqualTo("FULL");
  }

  @Test
  void tooFewLinesAreSavedInTheStatedOrder() {
    assertThat(fit(21, controller(TemperatureUnit.CELSIUS, 7, 6000)).changes())
        .containsExactly("burn-off and bubble squeeze share one line: slower rate");
    assertThat(fit(21, controller(TemperatureUnit.CELSIUS, 6, 6000)).changes()).hasSize(2);
    FittedPlan five = fit(21, controller(TemperatureUnit.CELSIUS, 5, 6000));
    assertThat(five.isRunnable()).isTrue();
    assertThat(five.lines())
        .extracting(PlannedSegment::stage)
        .containsExactly(Stage.SQUEEZE, Stage.TOP, Stage.SOAK, Stage.SLOPE_2, Stage.SLOPE_3);
    // the slower rate wins: the first slope's
    assertThat(first(five, Stage.SLOPE_2).segment().rateCPerHour()).hasValue(5);
    assertThat(first(five, Stage.SOAK).segment().holdMinutes())
        .isEqualTo(plan(21).lines().get(4).holdMinutes());
  }

  @Test
  void aRateThatCannotBeHeldBecomesAStaircaseIfThereAreLines() {
    FittedPlan fitted = fit(60, controller(TemperatureUnit.CELSIUS, 120, 6000));
    // 9335 / 120² = 0.65 per hour, below the slowest 1
    assertThat(fitted.isRunnable()).isTrue();
    assertThat(fitted.changes()).anyMatch(c -> c.contains("staircase"));
    PlannedSegment stair = first(fitted, Stage.SLOPE_1);
    assertThat(503 - stair.segment().targetC().orElseThrow()).isBetween(0.5, 2.0);
    assertThat(stair.segment().holdMinutes()).isGreaterThan(2 / 0.66 * 60 * 0.9);
  }

  @Test
  void withoutLinesForItTheReasonIsGiven() {
    FittedPlan fitted = fit(60, Controller.ORDINARY);
    assertThat(fitted.isRunnable()).isFalse();
    assertThat(fitted.refusal().orElseThrow().text()).contains("lines", "8", "slowest rate");
    assertThat(fitted.typed()).isEmpty();
  }

  @Test
  void aTopAboveTheKilnIsRefused() {
    var small = new Controller(TemperatureUnit.CELSIUS, 700, 1, 999, 1, 8, 6000, "");
    assertThat(fit(21, small).refusal().orElseThrow().text()).contains("797 °C", "700 °C");
  }

  @Test
  void aLongHoldGoesOnInTheNextLine() {
    FittedPlan fitted = fit(21, controller(TemperatureUnit.CELSIUS, 12, 60));
    double held =
        fitted.lines().stream()
            .filter(l -> l.stage() == Stage.SOAK)
            .mapToDouble(l -> l.segment().holdMinutes())
            .sum();
    assertThat(held).isEqualTo(plan(21).lines().get(4).holdMinutes());
    assertThat(fitted.lines()).allMatch(l -> l.segment().holdMinutes() <= 60);
  }

  @Test
  void withoutACodeForFreeTheFastestRateIsTyped() {
    var plain = new Controller(TemperatureUnit.CELSIUS, 900, 1, 500, 1, 8, 6000, "");
    FittedPlan fitted = fit(21, plain);
    assertThat(fitted.typed().get(4).rate()).isEqualTo("500");
  }

  @Test
  void controllersThatCannotBeAreRefusedByField() {
    assertThatThrownBy(() -> controller(TemperatureUnit.CELSIUS, 4, 60))
        .hasMessageStartingWith("lines");
    assertThatThrownBy(
            () -> new Controller(TemperatureUnit.CELSIUS, Double.NaN, 1, 999, 1, 8, 60, ""))
        .hasMessageStartingWith("highest");
    assertThatThrownBy(() -> new Controller(TemperatureUnit.CELSIUS, 900, 0, 999, 1, 8, 60, ""))
        .hasMessageStartingWith("slowest");
  }

  @Test
  void thePaceOfAKilnIsFittedFromReadings() {
    // 20 + 500 exp(-t/4): 520, 409.4, 323.3 at 0, 1, 2 h
    var cooling =
        List.of(
            new KilnFit.Reading(0, 520),
            new KilnFit.Reading(1, 409.4),
            new KilnFit.Reading(2, 323.3));
    var heating = List.of(new KilnFit.Reading(0, 20), new KilnFit.Reading(1.5, 470));
    KilnPace pace = KilnFit.pace(heating, cooling, 20);
    assertThat(pace.coolingHours()).isCloseTo(4, within(0.01));
    assertThat(pace.heatingCPerHour()).isCloseTo(300, within(1e-9));
    assertThat(KilnFit.lossWPerK(0.25, 6000, 620, 20)).isCloseTo(2.5, within(1e-9));
    assertThatThrownBy(() -> KilnFit.coolingHours(heating, 20)).hasMessageContaining("room");
    assertThatThrownBy(() -> KilnFit.coolingHours(List.of(), 20)).hasMessageContaining("two");
    assertThatThrownBy(() -> KilnFit.heatingCPerHour(cooling)).hasMessageContaining("rise");
  }
}
