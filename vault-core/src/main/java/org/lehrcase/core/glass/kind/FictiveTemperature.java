package org.lehrcase.core.glass.kind;

/**
 * The structure of one spot of glass over time, after Tool, Narayanaswamy and Moynihan: each part
 * of the spectrum runs after the temperature, dTf/dt = (T - Tf) / tau, where tau follows viscosity
 * at the present temperature and structure.
 *
 * <p>A step is exact for a temperature that changes evenly while viscosity stays; viscosity is
 * taken in the middle of the step, so steps converge at second order and never explode.
 */
public final class FictiveTemperature {
  private static final double LN_10 = Math.log(10);

  /** A guess of the middle that is off by more than this is corrected once, kelvin. */
  private static final double GUESS_K = 0.02;

  private final Viscosity viscosity;
  private final double shearPa;
  private final double[] before = new double[RelaxationSpectrum.TERMS];
  private final double[] parts = new double[RelaxationSpectrum.TERMS];
  private double meanC;
  private double ratePerS;
  private double maxwellSeconds;

  /**
   * Starts in equilibrium.
   *
   * @param viscosity of the glass
   * @param shearPa shear modulus
   * @param startC temperature and structure at the start
   */
  public FictiveTemperature(Viscosity viscosity, double shearPa, double startC) {
    this.viscosity = viscosity;
    this.shearPa = shearPa;
    java.util.Arrays.fill(parts, startC);
    this.meanC = startC;
    this.maxwellSeconds = seconds(startC, startC);
  }

  /** Goes on evenly from one temperature to another. */
  public void advance(double fromC, double toC, double seconds) {
    System.arraycopy(parts, 0, before, 0, parts.length);
    double startC = meanC;
    double middleC = (fromC + toC) / 2;
    double guessedC = startC + ratePerS * seconds / 2;
    meanC = moved(fromC, toC, seconds, seconds(middleC, guessedC));
    double foundC = (startC + meanC) / 2;
    if (Math.abs(foundC - guessedC) > GUESS_K) {
      meanC = moved(fromC, toC, seconds, seconds(middleC, foundC));
    }
    ratePerS = (meanC - startC) / seconds;
  }

  /** Returns the fictive temperature, °C. */
  public double celsius() {
    return meanC;
  }

  /** Returns viscosity over shear modulus in the middle of the last step, seconds. */
  public double maxwellSeconds() {
    return maxwellSeconds;
  }

  /** Returns log10 of viscosity now, Pa s. */
  public double log10PaS(double celsius) {
    return viscosity.log10Frozen(celsius, meanC);
  }

  private double seconds(double celsius, double fictiveC) {
    return Math.exp(LN_10 * viscosity.log10Frozen(celsius, fictiveC)) / shearPa;
  }

  private double moved(double fromC, double toC, double seconds, double maxwell) {
    maxwellSeconds = maxwell;
    if (seconds < RelaxationSpectrum.NOTHING * RelaxationSpectrum.structureTime(0) * maxwell) {
      return meanC; // frozen: the parts stay as they are
    }
    double sum = 0;
    for (int term = 0; term < parts.length; term++) {
      double u = seconds / (RelaxationSpectrum.structureTime(term) * maxwell);
      double left = RelaxationSpectrum.left(u);
      double mean = RelaxationSpectrum.meanLeft(u, left);
      parts[term] = toC - (toC - fromC) * mean + (before[term] - fromC) * left;
      sum += RelaxationSpectrum.weight(term) * parts[term];
    }
    return sum;
  }
}
