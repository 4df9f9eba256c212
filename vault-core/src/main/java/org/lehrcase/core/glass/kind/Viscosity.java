package org.lehrcase.core.glass.kind;

import java.util.OptionalDouble;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;
import org.lehrcase.core.glass.say.Refused;

/**
 * Viscosity of a glass in and out of equilibrium, log10 Pa s.
 *
 * <p>In equilibrium it follows {@link Vft}. Once the structure is frozen at a fictive temperature,
 * viscosity rises far more slowly on cooling: half of the local activation energy is left, as in
 * the tempering literature (x = 0.5; Carré and Daudeville 1999, Nielsen et al. 2010).
 *
 * @param equilibrium the line of equilibrium
 * @param annealingC annealing point
 * @param strainC strain point: the maker's, or predicted by relaxation at 4 K/min
 */
public record Viscosity(Vft equilibrium, double annealingC, double strainC) {
  /** Share of the activation energy that is left at constant structure. */
  public static final double FROZEN_SHARE = 0.5;

  /** 0 °C in kelvin. */
  public static final double ZERO_C_IN_K = 273.15;

  /** Temperatures are never taken closer to t0 than this, kelvin. */
  private static final double AWAY_FROM_T0 = 5;

  /** Known glasses have their annealing point 200 K and more above t0. */
  private static final double LEAST_ABOVE_T0 = 150;

  /**
   * Draws the line of a glass: through annealing, softening and working point if that gives a
   * plausible one, otherwise through the first two.
   *
   * @param annealingC annealing point
   * @param softeningC Littleton softening point, above it
   * @param workingC working point, if known
   * @throws IllegalArgumentException if no plausible line goes through the points
   */
  public static Vft line(double annealingC, double softeningC, OptionalDouble workingC) {
    var annealing = new Vft.Point(annealingC, Vft.ANNEALING);
    var softening = new Vft.Point(softeningC, Vft.SOFTENING);
    if (workingC.isPresent()) {
      var working = new Vft.Point(workingC.getAsDouble(), Vft.WORKING);
      Vft three = Vft.throughThree(annealing, softening, working);
      if (three.isPlausible()) {
        return three;
      }
    }
    Vft two = Vft.throughTwo(annealing, softening);
    if (!two.isPlausible() || annealingC - two.t0C() < LEAST_ABOVE_T0) {
      throw new Refused(
          "softening_c",
          Phrase.of(
              "must be a Littleton softening point: no viscosity line of a glass passes the"
                  + " annealing point {} and the softening point {}",
              Figure.celsius(annealingC),
              Figure.celsius(softeningC)));
    }
    return two;
  }

  /**
   * Returns log10 of the equilibrium viscosity, Pa s; flat where the line would leave for infinity.
   */
  public double log10Equilibrium(double celsius) {
    return equilibrium.log10PaS(Math.max(celsius, equilibrium.t0C() + AWAY_FROM_T0));
  }

  /**
   * Returns log10 of viscosity at a temperature with the structure of another.
   *
   * @param celsius temperature
   * @param fictiveC fictive temperature: where this structure would be in equilibrium
   */
  public double log10Frozen(double celsius, double fictiveC) {
    double aboveT0 = Math.max(fictiveC - equilibrium.t0C(), AWAY_FROM_T0);
    double kelvin = fictiveC + ZERO_C_IN_K;
    double slope = FROZEN_SHARE * equilibrium.b() * kelvin * kelvin / (aboveT0 * aboveT0);
    return equilibrium.a()
        + equilibrium.b() / aboveT0
        + slope * (1 / (celsius + ZERO_C_IN_K) - 1 / kelvin);
  }

  /**
   * Returns log10 of viscosity for a model without structure: equilibrium above the annealing
   * point, below it the Arrhenius line through annealing and strain point, which is what ASTM C336
   * and C598 measure while cooling.
   */
  public double log10Annealed(double celsius) {
    if (celsius >= annealingC) {
      return log10Equilibrium(celsius);
    }
    double annealing = 1 / (annealingC + ZERO_C_IN_K);
    double strain = 1 / (strainC + ZERO_C_IN_K);
    double share = (1 / (celsius + ZERO_C_IN_K) - annealing) / (strain - annealing);
    return Vft.ANNEALING + share * (Vft.STRAIN - Vft.ANNEALING);
  }

  /** Returns where the equilibrium line reaches a viscosity, °C. */
  public double celsiusAt(double log10PaS) {
    return equilibrium.celsiusAt(log10PaS);
  }
}
