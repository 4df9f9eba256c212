package org.lehrcase.core.glass.kind;

/**
 * The Vogel-Fulcher-Tammann line: log10 of viscosity in Pa s is a + b / (t - t0).
 *
 * @param a value at infinite temperature, log10 Pa s
 * @param b slope in kelvin
 * @param t0C where viscosity would become infinite, °C
 */
public record Vft(double a, double b, double t0C) {
  /** log10 Pa s at the strain point. */
  public static final double STRAIN = 13.5;

  /** log10 Pa s at the annealing point. */
  public static final double ANNEALING = 12.0;

  /** log10 Pa s at Littleton's softening point; some tables put 6.65. */
  public static final double SOFTENING = 6.6;

  /** log10 Pa s at the working point. */
  public static final double WORKING = 3.0;

  /** The constant of Fluegel's window glass (2007), log10 Pa s; with it two points fix a line. */
  public static final double USUAL_A = -2.585;

  /**
   * A point on the line.
   *
   * @param celsius where
   * @param log10PaS log10 of viscosity
   */
  public record Point(double celsius, double log10PaS) {}

  /** Draws the line with {@link #USUAL_A} through two points. */
  public static Vft throughTwo(Point one, Point two) {
    double first = one.log10PaS() - USUAL_A;
    double second = two.log10PaS() - USUAL_A;
    double t0 = (first * one.celsius() - second * two.celsius()) / (first - second);
    return new Vft(USUAL_A, first * (one.celsius() - t0), t0);
  }

  /** Draws the line through three points, whatever it is worth: ask {@link #isPlausible}. */
  public static Vft throughThree(Point one, Point two, Point three) {
    double q =
        (one.log10PaS() - two.log10PaS())
            * (three.celsius() - two.celsius())
            / ((two.log10PaS() - three.log10PaS()) * (two.celsius() - one.celsius()));
    double t0 = (q * one.celsius() - three.celsius()) / (q - 1);
    double b =
        (one.log10PaS() - two.log10PaS()) / (1 / (one.celsius() - t0) - 1 / (two.celsius() - t0));
    return new Vft(one.log10PaS() - b / (one.celsius() - t0), b, t0);
  }

  /**
   * Says whether the line can be that of a glass: t0 between 0 °C and 500 °C, a between -6 and 0, b
   * above 0. A strain point among the points fails here: it is not a point of equilibrium (ISO
   * 7884-7).
   */
  public boolean isPlausible() {
    return t0C >= 0 && t0C <= 500 && a >= -6 && a <= 0 && b > 0;
  }

  /** Returns log10 of viscosity in Pa s; above {@code t0}. */
  public double log10PaS(double celsius) {
    return a + b / (celsius - t0C);
  }

  /** Returns where a viscosity is reached, °C. */
  public double celsiusAt(double log10PaS) {
    return t0C + b / (log10PaS - a);
  }
}
