package org.lehrcase.core.glass.stress;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.heat.Slab;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.kind.Material;
import org.lehrcase.core.glass.kind.RelaxationSpectrum;

/**
 * Conduction, structure and all six terms of shear of a whole plate as one system of ordinary
 * equations, left to the integrator of Apache Commons Math, beside the simulation that is shown.
 * Nothing of our stepping is used: only the material and its viscosity are.
 */
class IndependentFiringTest {
  private static final GlassKind GLASS = GlassKinds.byId("coe-90").orElseThrow();
  private static final Material OF = GLASS.material();
  private static final double THICK_M = 0.022;
  private static final double START_C = 530;
  private static final double END_C = 400;
  private static final double RATE = 150 / 3600.0;
  private static final double SECONDS = (START_C - END_C) / RATE;
  private static final int INTERVALS = 12;
  private static final int NODES = INTERVALS + 1;
  private static final int TERMS = RelaxationSpectrum.TERMS;

  /** For each node: temperature, parts of structure, parts of stress in MPa. */
  private static final int STATES = 1 + 2 * TERMS;

  /** The right-hand side of docs/physics.md, sections 1, 3 and 4, written down once more. */
  private static final class Plate implements FirstOrderDifferentialEquations {
    private final double[] fictiveSlope = new double[NODES];
    private final double[] flow = new double[NODES];
    private final double[] maxwell = new double[NODES];

    @Override
    public int getDimension() {
      return NODES * STATES;
    }

    @Override
    public void computeDerivatives(double t, double[] y, double[] dot) {
      for (int node = 0; node < NODES; node++) {
        dot[node * STATES] = warming(y, node);
        structure(y, dot, node);
      }
      stress(y, dot);
    }

    private static double warming(double[] y, int node) {
      if (node == INTERVALS) {
        return -RATE;
      }
      double spacing = THICK_M / 2 / INTERVALS;
      double below = y[(node == 0 ? 1 : node - 1) * STATES];
      double above = y[(node + 1) * STATES];
      return OF.diffusivityM2PerS() * (below - 2 * y[node * STATES] + above) / (spacing * spacing);
    }

    private void structure(double[] y, double[] dot, int node) {
      int at = node * STATES;
      double fictive = 0;
      for (int term = 0; term < TERMS; term++) {
        fictive += RelaxationSpectrum.weight(term) * y[at + 1 + term];
      }
      double log10 = GLASS.viscosity().log10Frozen(y[at], fictive);
      maxwell[node] = Math.pow(10, log10) / OF.shearPa();
      fictiveSlope[node] = 0;
      for (int term = 0; term < TERMS; term++) {
        double tau = RelaxationSpectrum.structureTime(term) * maxwell[node];
        dot[at + 1 + term] = (y[at] - y[at + 1 + term]) / tau;
        fictiveSlope[node] += RelaxationSpectrum.weight(term) * dot[at + 1 + term];
      }
    }

    /** s' (1 + 4G/3K) = 6G (e' - th') - sum s_i/tau_i, with e' from forces that balance. */
    private void stress(double[] y, double[] dot) {
      double six = 6 * OF.shearPa() / 1e6;
      double volume = 1 + 4 * OF.shearPa() / (3 * OF.bulkPa());
      double[] thermal = new double[NODES];
      double[] push = new double[NODES];
      for (int node = 0; node < NODES; node++) {
        double extra = RelaxationSpectrum.LIQUID_TO_SOLID_EXPANSION - 1;
        thermal[node] = OF.expansionPerK() * (dot[node * STATES] + extra * fictiveSlope[node]);
        flow[node] = 0;
        for (int term = 0; term < TERMS; term++) {
          double tau = RelaxationSpectrum.shearTime(term) * maxwell[node];
          flow[node] += y[node * STATES + 1 + TERMS + term] / tau;
        }
        push[node] = thermal[node] + flow[node] / six;
      }
      double common = mean(push);
      for (int node = 0; node < NODES; node++) {
        double whole = (six * (common - thermal[node]) - flow[node]) / volume;
        double strain = common - thermal[node] - 2 * whole / (9 * OF.bulkPa() / 1e6);
        for (int term = 0; term < TERMS; term++) {
          int at = node * STATES + 1 + TERMS + term;
          double tau = RelaxationSpectrum.shearTime(term) * maxwell[node];
          dot[at] = six * RelaxationSpectrum.weight(term) * strain - y[at] / tau;
        }
      }
    }
  }

  private static double mean(double[] values) {
    double sum = (values[0] + values[INTERVALS]) / 2;
    for (int node = 1; node < INTERVALS; node++) {
      sum += values[node];
    }
    return sum / INTERVALS;
  }

  /** Stress of each node when the whole plate has one temperature and nothing flows, MPa. */
  private static double[] residual(double[] end) {
    double[] celsius = new double[NODES];
    for (int node = 0; node < NODES; node++) {
      celsius[node] = end[node * STATES];
    }
    double mean = mean(celsius);
    double[] residual = new double[NODES];
    for (int node = 0; node < NODES; node++) {
      residual[node] = OF.stressPaPerK() / 1e6 * (celsius[node] - mean);
      for (int term = 0; term < TERMS; term++) {
        residual[node] += end[node * STATES + 1 + TERMS + term];
      }
    }
    return residual;
  }

  private static double[] integrated() {
    double[] start = new double[NODES * STATES];
    for (int node = 0; node < NODES; node++) {
      Arrays.fill(start, node * STATES, node * STATES + 1 + TERMS, START_C);
    }
    double[] end = new double[start.length];
    new DormandPrince853Integrator(1e-9, SECONDS, 1e-7, 1e-7)
        .integrate(new Plate(), 0, start, SECONDS, end);
    return end;
  }

  @Test
  void theStressThatStaysIsThatOfAGeneralIntegrator() {
    double[] other = residual(integrated());
    var load = new FiringLoad(GLASS, Slab.ofGlass(THICK_M, Faces.BOTH), true, START_C);
    var accuracy = new FiringSimulation.Accuracy(INTERVALS, 1);
    List<KilnLeg> legs = List.of(KilnLeg.even(0, START_C, END_C, SECONDS));
    StressOutcome ours = FiringSimulation.run(load, legs, accuracy).main();
    assertThat(ours.residualCoreMpa()).isCloseTo(other[0], Percentage.withPercentage(1));
    assertThat(ours.residualFaceMpa()).isCloseTo(other[INTERVALS], Percentage.withPercentage(1));
    assertThat(other[0]).isPositive();
  }
}
