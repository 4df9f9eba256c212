package org.lehrcase.core.glass.kind;

/**
 * Predicts the strain point from annealing and softening point alone: glass is cooled at 4 K/min as
 * ASTM C336 and C598 say, its structure falls behind, and the strain point is where viscosity
 * reaches 10^13.5 Pa s.
 */
public final class StrainPoint {
  private static final double COOLING_K_PER_S = 4.0 / 60;
  private static final double ABOVE_K = 100;
  private static final double STEP_K = 0.5;

  private StrainPoint() {}

  /**
   * Returns the strain point, °C.
   *
   * @param line equilibrium viscosity
   * @param annealingC annealing point
   * @param shearPa shear modulus
   */
  public static double predicted(Vft line, double annealingC, double shearPa) {
    var viscosity = new Viscosity(line, annealingC, Double.NaN);
    double celsius = annealingC + ABOVE_K;
    var structure = new FictiveTemperature(viscosity, shearPa, celsius);
    double log10 = structure.log10PaS(celsius);
    while (log10 < Vft.STRAIN) {
      double lower = celsius - STEP_K;
      structure.advance(celsius, lower, STEP_K / COOLING_K_PER_S);
      double next = structure.log10PaS(lower);
      if (next >= Vft.STRAIN) {
        return celsius - STEP_K * (Vft.STRAIN - log10) / (next - log10);
      }
      celsius = lower;
      log10 = next;
    }
    return celsius;
  }
}
