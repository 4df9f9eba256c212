package org.lehrcase.core.glass.heat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.kind.Material;

/** Conduction against exact sums: Carslaw and Jaeger; Incropera and DeWitt for the open face. */
class SlabHeatTest {
  private static final Material GLASS = GlassKinds.byId("coe-90").orElseThrow().material();
  private static final double KAPPA = GLASS.diffusivityM2PerS();
  private static final Slab BOTH = Slab.ofGlass(0.030, Faces.BOTH);
  private static final double LENGTH = 0.015;

  private static double seconds(double fo) {
    return fo * LENGTH * LENGTH / KAPPA;
  }

  /** Four fully implicit quarter steps at the kink, then Crank-Nicolson. */
  private static SlabHeat stepped(int intervals, int steps, double fo) {
    var heat = new SlabHeat(BOTH, GLASS, intervals, 1);
    double length = seconds(fo) / steps;
    for (int i = 0; i < 4; i++) {
      heat.stepWithFaceAt(length / 4, 0, true);
    }
    for (int i = 1; i < steps; i++) {
      heat.stepWithFaceAt(length, 0, false);
    }
    return heat;
  }

  private static double mean(SlabHeat heat) {
    int last = heat.glassNodes() - 1;
    double sum = (heat.celsius(0) + heat.celsius(last)) / 2;
    for (int i = 1; i < last; i++) {
      sum += heat.celsius(i);
    }
    return sum / last;
  }

  @ParameterizedTest(name = "Fo {0}")
  @CsvSource({"0.1, 0.94931", "0.2, 0.77231", "0.5, 0.37078", "1.0, 0.10798"})
  void theMiddleAfterAStepOfTheFace(double fo, double expected) {
    assertThat(SlabSeries.step(0, fo)).isCloseTo(expected, within(1e-5));
    assertThat(stepped(80, 400, fo).celsius(0)).isCloseTo(expected, within(2e-4));
  }

  @ParameterizedTest(name = "Fo {0}")
  @CsvSource({"0.1, 0.64318", "0.5, 0.23605"})
  void theMeanAfterAStepOfTheFace(double fo, double expected) {
    assertThat(SlabSeries.stepMean(fo)).isCloseTo(expected, within(1e-5));
    assertThat(mean(stepped(80, 400, fo))).isCloseTo(expected, within(3e-4));
  }

  @ParameterizedTest(name = "Bi {0}")
  @CsvSource({"0.1, 0.3111, 1.0161", "1, 0.8603, 1.1191", "10, 1.4289, 1.2620"})
  void rootsOfThePlaneWall(double bi, double root, double coefficient) {
    // the table of Incropera and DeWitt, from memory (99 %)
    assertThat(SlabSeries.root(0, bi)).isCloseTo(root, within(1e-4));
    assertThat(SlabSeries.coefficient(SlabSeries.root(0, bi))).isCloseTo(coefficient, within(1e-4));
  }

  private static SlabHeat exchanged(Slab slab, double bi, double fo) {
    var heat = new SlabHeat(slab, GLASS, 60, 1);
    double exchange = bi * GLASS.conductivityWPerMK() / LENGTH;
    int steps = 400;
    double length = seconds(fo) / steps;
    double[] room = {0, 0};
    for (int i = 0; i < 4; i++) {
      heat.stepWithExchange(length / 4, room, exchange, true);
    }
    for (int i = 1; i < steps; i++) {
      heat.stepWithExchange(length, room, exchange, false);
    }
    return heat;
  }

  @Test
  void theMiddleInStillAir() {
    assertThat(SlabSeries.exchange(0, 1, 1)).isCloseTo(0.53386, within(1e-5));
    assertThat(exchanged(BOTH, 1, 1).celsius(0)).isCloseTo(0.53386, within(2e-4));
  }

  @Test
  void oneFaceIsExactlyHalfOfASlabOfTwiceTheThickness() {
    SlabHeat one = exchanged(Slab.ofGlass(LENGTH, Faces.ONE), 1, 1);
    assertThat(one.celsius(0)).isCloseTo(exchanged(BOTH, 1, 1).celsius(0), within(1e-12));
  }

  @ParameterizedTest(name = "Fo {0}")
  @CsvSource({"0.2, 0.37039", "1, 0.91248", "3, 0.99937"})
  void theLagBuildsUpOnARamp(double fo, double expected) {
    assertThat(SlabSeries.ramp(0, fo)).isCloseTo(expected, within(1e-5));
    assertThat(ramped(60, 300, fo)).isCloseTo(expected, within(2e-4));
  }

  /** Lag of the middle behind a face that falls by 1 K/s, over its final value. */
  private static double ramped(int intervals, int steps, double fo) {
    var heat = new SlabHeat(BOTH, GLASS, intervals, 0);
    double length = seconds(fo) / steps;
    for (int i = 1; i <= 4; i++) {
      heat.stepWithFaceAt(length / 4, -length * i / 4, true);
    }
    for (int i = 2; i <= steps; i++) {
      heat.stepWithFaceAt(length, -length * i, false);
    }
    return (heat.celsius(0) - heat.faceC()) / new SteadyRamp(LENGTH, KAPPA).lagK(1);
  }

  @Test
  void refinementConvergesAtSecondOrder() {
    double exact = SlabSeries.ramp(0, 0.3);
    double coarse = Math.abs(ramped(10, 20, 0.3) - exact);
    double middle = Math.abs(ramped(20, 40, 0.3) - exact);
    double fine = Math.abs(ramped(40, 80, 0.3) - exact);
    assertThat(Math.log(coarse / middle) / Math.log(2)).isCloseTo(2.0, within(0.4));
    assertThat(Math.log(middle / fine) / Math.log(2)).isCloseTo(2.0, within(0.4));
  }

  @Test
  void lagAndTimeConstantOfAKnownBlock() {
    // R l² / 2 kappa and 4 l² / (pi² kappa), worked out by hand for 25 mm and 60 K/h
    var both = SteadyRamp.of(Slab.ofGlass(0.025, Faces.BOTH), GLASS);
    var one = SteadyRamp.of(Slab.ofGlass(0.025, Faces.ONE), GLASS);
    assertThat(both.lagK(60 / 3600.0)).isCloseTo(2.98, Percentage.withPercentage(0.5));
    assertThat(one.lagK(60 / 3600.0)).isCloseTo(11.94, Percentage.withPercentage(0.5));
    assertThat(both.timeConstantS()).isCloseTo(145, Percentage.withPercentage(1));
    assertThat(one.timeConstantS()).isCloseTo(580, Percentage.withPercentage(1));
    assertThat(one.lagK(one.rateForLag(7))).isCloseTo(7, within(1e-12));
  }

  @ParameterizedTest(name = "implicit {0}")
  @CsvSource({"true", "false"})
  void whatLeavesTheBlockIsWhatPassesItsFace(boolean implicit) {
    var heat = new SlabHeat(BOTH, GLASS, 24, 500);
    double exchange = 90;
    double seconds = 20;
    double passed = 0;
    double before = mean(heat);
    for (int i = 0; i < 50; i++) {
      double old = heat.faceC();
      heat.stepWithExchange(seconds, new double[] {400, 400}, exchange, implicit);
      double face = implicit ? heat.faceC() : (old + heat.faceC()) / 2;
      passed += exchange * (face - 400) * seconds;
    }
    double lost = (before - mean(heat)) * GLASS.heatJPerM3K() * LENGTH;
    assertThat(lost).isCloseTo(passed, Percentage.withPercentage(1e-8));
  }

  @Test
  void fullyImplicitStepsAreExactOnASteadyRampHoweverLong() {
    var heat = new SlabHeat(BOTH, GLASS, 24, 0);
    double hour = 3600;
    for (int i = 1; i <= 60; i++) {
      heat.stepWithFaceAt(hour, -10.0 * i, true);
    }
    double lag = new SteadyRamp(LENGTH, KAPPA).lagK(10 / hour);
    assertThat(heat.celsius(0) - heat.faceC()).isCloseTo(lag, Percentage.withPercentage(1e-6));
  }

  @Test
  void aBareShelfLengthensTheWay() {
    var bare = new Slab(0.020, Faces.ONE, 0.012);
    assertThat(bare.conductionLengthM()).isCloseTo(0.032, within(1e-12));
    assertThat(new SlabHeat(bare, GLASS, 20, 20).glassNodes()).isEqualTo(21);
    assertThatThrownBy(() -> new Slab(0.020, Faces.BOTH, 0.012))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> Slab.ofGlass(0, Faces.ONE))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void radiationRulesAtTheTopAndAirAtTheRoom() {
    // 7 + 4 x 0.89 x 5.67e-8 x 753³ = 93; at 20 °C radiation gives 5
    assertThat(HeatExchange.IN_KILN.wPerM2K(480, 480)).isCloseTo(93, within(1.0));
    assertThat(HeatExchange.IN_KILN.wPerM2K(20, 20)).isCloseTo(12.1, within(0.2));
    assertThat(HeatExchange.OPEN_LID.wPerM2K(60, 20)).isEqualTo(15);
  }
}
