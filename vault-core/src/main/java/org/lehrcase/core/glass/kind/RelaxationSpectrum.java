package org.lehrcase.core.glass.kind;

/**
 * How structure and shear relax: six exponentials each, in units of viscosity over shear modulus.
 *
 * <p>Weights and times are those of soda-lime glass after Narayanaswamy, as measured by Carré and
 * Daudeville (1999) and used by Nielsen et al. (2010) and Aronen and Karvinen (2018). Their mean
 * shear time at 869 K is 1.000 s, so that viscosity is shear modulus times one second there, and
 * one set of shapes serves every soda-lime glass through its viscosity.
 */
public final class RelaxationSpectrum {
  /** Number of exponentials. */
  public static final int TERMS = 6;

  /**
   * Expansion of the liquid over that of the solid. Published sets give 32 to 9 and, from memory,
   * 25.1 to 9.1; three lies between them.
   */
  public static final double LIQUID_TO_SOLID_EXPANSION = 3.0;

  private static final double[] WEIGHTS = {.05523, .08205, .1215, .2286, .2860, .2265};
  private static final double[] SHEAR = {6.658e-5, 1.197e-3, .01514, .1672, .7497, 3.292};
  private static final double[] STRUCTURE = {5.965e-4, 1.077e-2, .1362, 1.505, 6.747, 29.63};

  /** Beyond so many time constants nothing is left of a disturbance, in double precision. */
  private static final double GONE = 40;

  private static final double SMALL = 1e-5;

  /** Less than this share of the fastest time constant changes nothing that anyone could see. */
  static final double NOTHING = 1e-6;

  private static final double WEIGHT_SUM = sum(WEIGHTS);

  private RelaxationSpectrum() {}

  /** Returns the share of one exponential; all shares add up to 1. */
  public static double weight(int term) {
    return WEIGHTS[term] / WEIGHT_SUM;
  }

  /** Returns a relaxation time of stress, as a multiple of viscosity over shear modulus. */
  public static double shearTime(int term) {
    return SHEAR[term];
  }

  /** Returns a relaxation time of structure, as a multiple of viscosity over shear modulus. */
  public static double structureTime(int term) {
    return STRUCTURE[term];
  }

  /** Returns exp(-u), without work where the answer is 0 or 1. */
  public static double left(double u) {
    return u > GONE ? 0 : Math.exp(-u);
  }

  /** Returns (1 - exp(-u)) / u, the mean of what is left over a step; {@code left} is exp(-u). */
  public static double meanLeft(double u, double left) {
    return u < SMALL ? 1 - u / 2 : (1 - left) / u;
  }

  private static double sum(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum;
  }
}
