package org.lehrcase.core.glass.stress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.kind.Material;

/** Stress from given temperatures: Timoshenko and Goodier; Boley and Weiner 1960. */
class PlateStressTest {
  private static final Material GLASS = GlassKinds.byId("coe-90").orElseThrow().material();
  private static final int NODES = 201;
  private static final double COLD_SECONDS = 1e30;

  /** A parabola, 1 K warmer at node 0 than at the face. */
  private static double[] parabola(double scale) {
    double[] kelvin = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      double x = (double) i / (NODES - 1);
      kelvin[i] = scale * (1 - x * x);
    }
    return kelvin;
  }

  private static double[] thermal(double[] kelvin) {
    double[] strain = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      strain[i] = GLASS.expansionPerK() * kelvin[i];
    }
    return strain;
  }

  private static ShearStep step(Relaxation relaxation, double maxwellSeconds, double seconds) {
    ShearStep step = ShearStep.of(relaxation, GLASS, NODES);
    for (int i = 0; i < NODES; i++) {
      step.prepare(i, maxwellSeconds, seconds);
    }
    return step;
  }

  private static PlateStress elastic(Support support) {
    ShearStep step = step(Relaxation.STRUCTURAL, COLD_SECONDS, 1);
    var plate = new PlateStress(GLASS, support, NODES, step.terms());
    plate.advance(step, thermal(parabola(1)));
    return plate;
  }

  private static double ratio(PlateStress plate, int node) {
    return plate.pa(node) / GLASS.stressPaPerK();
  }

  @Test
  void heldFlatTheFaceIsPulledByTwoThirdsAndTheCorePressedByOne() {
    PlateStress plate = elastic(Support.HELD_FLAT);
    assertThat(ratio(plate, NODES - 1)).isCloseTo(2.0 / 3, within(2e-3));
    assertThat(ratio(plate, 0)).isCloseTo(-1.0 / 3, within(2e-3));
  }

  @Test
  void freeToBowBothFacesArePulledByASixth() {
    PlateStress plate = elastic(Support.FREE_TO_BOW);
    assertThat(ratio(plate, NODES - 1)).isCloseTo(1.0 / 6, within(2e-3));
    assertThat(ratio(plate, 0)).isCloseTo(1.0 / 6, within(2e-3));
    assertThat(ratio(plate, NODES / 2)).isCloseTo(-1.0 / 12, within(2e-3));
  }

  @Test
  void aStraightProfileMakesNoStressInABlockThatMayBow() {
    ShearStep step = step(Relaxation.PLAIN, COLD_SECONDS, 1);
    var plate = new PlateStress(GLASS, Support.FREE_TO_BOW, NODES, step.terms());
    double[] straight = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      straight[i] = 30.0 * i / (NODES - 1);
    }
    plate.advance(step, thermal(straight));
    for (int i = 0; i < NODES; i++) {
      assertThat(plate.pa(i)).isCloseTo(0, within(1.0));
    }
  }

  @Test
  void aPlateStressDecaysToAThirdInOneBiaxialTime() {
    // tau = 3 (1 - nu) / (1 + nu) eta / G, in 400 steps
    ShearStep elastic = step(Relaxation.PLAIN, COLD_SECONDS, 1);
    var plate = new PlateStress(GLASS, Support.HELD_FLAT, NODES, elastic.terms());
    plate.advance(elastic, thermal(parabola(1)));
    double start = plate.pa(0);
    double tau = 3 * (1 - GLASS.poisson()) / (1 + GLASS.poisson());
    ShearStep small = step(Relaxation.PLAIN, 1, tau / 400);
    for (int i = 0; i < 400; i++) {
      plate.advance(small, new double[NODES]);
    }
    assertThat(plate.pa(0) / start).isCloseTo(Math.exp(-1), within(1e-3));
  }

  @Test
  void aProfileFrozenInComesBackWithTheOtherSign() {
    ShearStep cold = step(Relaxation.STRUCTURAL, COLD_SECONDS, 1);
    var plate = new PlateStress(GLASS, Support.HELD_FLAT, NODES, cold.terms());
    // stress-free with the profile inside, then the profile is taken away
    double[] residual = plate.residualPa(GLASS, parabola(1));
    assertThat(residual[0] / GLASS.stressPaPerK()).isCloseTo(1.0 / 3, within(2e-3));
    assertThat(residual[NODES - 1] / GLASS.stressPaPerK()).isCloseTo(-2.0 / 3, within(2e-3));
  }

  @Test
  void forcesBalanceThroughEveryViscosity() {
    var plate = new PlateStress(GLASS, Support.FREE_TO_BOW, NODES, 6);
    for (int log10 = -6; log10 < 14; log10++) {
      plate.advance(step(Relaxation.STRUCTURAL, Math.pow(10, log10), 10), thermal(parabola(log10)));
      assertThat(plate.meanPa()).isCloseTo(0, within(1.0));
    }
  }
}
