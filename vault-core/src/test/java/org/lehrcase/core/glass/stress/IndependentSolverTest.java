package org.lehrcase.core.glass.stress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.apache.commons.math3.ode.FirstOrderDifferentialEquations;
import org.apache.commons.math3.ode.nonstiff.DormandPrince853Integrator;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.heat.Slab;
import org.lehrcase.core.glass.heat.SlabHeat;
import org.lehrcase.core.glass.kind.FictiveTemperature;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.kind.RelaxationSpectrum;

/**
 * The same equations given to a general-purpose integrator of a library that knows nothing of ours:
 * explicit Runge-Kutta of order 8 with its own error control, Apache Commons Math.
 */
class IndependentSolverTest {
  private static final GlassKind GLASS = GlassKinds.byId("coe-90").orElseThrow();
  private static final double TOLERANCE = 1e-9;

  /** Right-hand side of an equation; the library's interface carries a size as well. */
  private interface Slope {
    void at(double seconds, double[] state, double[] slope);
  }

  private static double[] integrate(double[] start, double seconds, Slope slope) {
    var equations =
        new FirstOrderDifferentialEquations() {
          @Override
          public int getDimension() {
            return start.length;
          }

          @Override
          public void computeDerivatives(double t, double[] y, double[] yDot) {
            slope.at(t, y, yDot);
          }
        };
    double[] end = new double[start.length];
    new DormandPrince853Integrator(1e-9, seconds, TOLERANCE, TOLERANCE)
        .integrate(equations, 0, start, seconds, end);
    return end;
  }

  @Test
  void conductionByTheMethodOfLines() {
    int intervals = 24;
    double length = 0.016;
    double rate = 200 / 3600.0;
    double seconds = 1500;
    double kappa = GLASS.material().diffusivityM2PerS();
    double spacing = length / intervals;
    double[] start = new double[intervals];
    java.util.Arrays.fill(start, 700);
    double[] other =
        integrate(
            start,
            seconds,
            (t, y, dot) -> {
              double face = 700 - rate * t;
              for (int i = 0; i < y.length; i++) {
                double below = i == 0 ? y[1] : y[i - 1];
                double above = i == y.length - 1 ? face : y[i + 1];
                dot[i] = kappa * (below - 2 * y[i] + above) / (spacing * spacing);
              }
            });
    var heat = new SlabHeat(Slab.ofGlass(length, Faces.ONE), GLASS.material(), intervals, 700);
    int steps = 600;
    for (int i = 1; i <= steps; i++) {
      heat.stepWithFaceAt(seconds / steps, 700 - rate * seconds * i / steps, i == 1);
    }
    for (int node = 0; node < intervals; node++) {
      assertThat(heat.celsius(node)).isCloseTo(other[node], within(0.01));
    }
  }

  @Test
  void structureDuringCooling() {
    double rate = 6.0 / 60;
    double seconds = 90 / rate;
    double shear = GLASS.material().shearPa();
    double[] start = new double[RelaxationSpectrum.TERMS - 2];
    java.util.Arrays.fill(start, 590);
    // the two fastest terms follow at once; an explicit method would take billions of steps
    double[] other =
        integrate(
            start,
            seconds,
            (t, y, dot) -> {
              double celsius = 590 - rate * t;
              double maxwell =
                  Math.pow(10, GLASS.viscosity().log10Frozen(celsius, mean(y, celsius))) / shear;
              for (int i = 0; i < y.length; i++) {
                dot[i] = (celsius - y[i]) / (RelaxationSpectrum.structureTime(i + 2) * maxwell);
              }
            });
    var ours = new FictiveTemperature(GLASS.viscosity(), shear, 590);
    for (double c = 590; c > 500.1; c -= 0.25) {
      ours.advance(c, c - 0.25, 0.25 / rate);
    }
    assertThat(ours.celsius()).isCloseTo(mean(other, 500), within(0.3));
  }

  private static double mean(double[] slow, double celsius) {
    double sum = (RelaxationSpectrum.weight(0) + RelaxationSpectrum.weight(1)) * celsius;
    for (int i = 0; i < slow.length; i++) {
      sum += RelaxationSpectrum.weight(i + 2) * slow[i];
    }
    return sum;
  }

  @Test
  void plainFlowOfAWholePlate() {
    // Maxwell in the plane: s' = M (e' - th') - s / tau, forces balanced; quasi-steady parabola
    double length = 0.0125;
    double rate = 60 / 3600.0;
    double kappa = GLASS.material().diffusivityM2PerS();
    double lag = rate * length * length / (2 * kappa);
    int nodes = 25;
    double seconds = (600 - 380) / rate;
    double[] other =
        integrate(new double[nodes], seconds, (t, y, dot) -> maxwell(y, dot, 600 - rate * t, lag));
    List<KilnLeg> legs = List.of(KilnLeg.even(0, 600, 380, seconds));
    var load = new FiringLoad(GLASS, Slab.ofGlass(0.025, Faces.BOTH), true, 600);
    double core =
        FiringSimulation.run(load, legs)
            .outcome(Relaxation.PLAIN, Support.HELD_FLAT)
            .residualCoreMpa();
    double parabola = GLASS.material().stressPaPerK() * lag / 3;
    assertThat(core * 1e6).isCloseTo(other[0] + parabola, Percentage.withPercentage(2));
  }

  private static void maxwell(double[] y, double[] dot, double faceC, double lag) {
    int last = y.length - 1;
    double flow = 0;
    double modulus = GLASS.material().biaxialPa();
    for (int i = 0; i <= last; i++) {
      double x = (double) i / last;
      double celsius = faceC + lag * (1 - x * x);
      double eta = Math.pow(10, GLASS.viscosity().log10Annealed(celsius));
      double tau = 6 * (1 - GLASS.material().poisson()) * eta / GLASS.material().youngsPa();
      dot[i] = -y[i] / tau;
      flow += (i == 0 || i == last ? 0.5 : 1) * dot[i] / last;
    }
    // every layer cools alike, so the common strain only has to undo the mean of the flow
    for (int i = 0; i <= last; i++) {
      dot[i] += modulus * (-flow / modulus);
    }
  }
}
