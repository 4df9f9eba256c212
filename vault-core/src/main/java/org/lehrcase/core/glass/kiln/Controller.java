package org.lehrcase.core.glass.kiln;

import org.lehrcase.core.glass.TemperatureUnit;

/**
 * What a kiln's controller can be told. Rates and temperatures are in its own unit.
 *
 * @param unit unit on its display
 * @param highest highest set point
 * @param slowestPerHour smallest rate, above 0
 * @param fastestPerHour largest rate
 * @param ratePerHourStep resolution of rates, above 0
 * @param lines how many lines a program may have
 * @param longestHoldMinutes longest hold of one line
 * @param freeCode what is typed for "as fast as the kiln can"; empty if it has no such thing
 */
public record Controller(
    TemperatureUnit unit,
    double highest,
    double slowestPerHour,
    double fastestPerHour,
    double ratePerHourStep,
    int lines,
    double longestHoldMinutes,
    String freeCode) {

  /** Fewer lines cannot hold rise, top, soak and two slopes. */
  public static final int FEWEST_LINES = 5;

  /** An ordinary controller in °C: whole degrees, eight lines. Common practice, no source. */
  public static final Controller ORDINARY =
      new Controller(TemperatureUnit.CELSIUS, 900, 1, 999, 1, 8, 99 * 60 + 59, "999");

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException with a message that begins with the JSON name of the field
   */
  public Controller {
    require(highest >= 300 && highest <= 2500, "highest must lie between 300 and 2500");
    require(slowestPerHour > 0, "slowest_per_h must be above 0");
    require(fastestPerHour > slowestPerHour, "fastest_per_h must be above slowest_per_h");
    require(ratePerHourStep > 0, "rate_step_per_h must be above 0");
    require(
        lines >= FEWEST_LINES && lines <= 1000,
        "lines must be at least 5, for rise, top, soak and two slopes");
    require(longestHoldMinutes >= 1, "longest_hold_min must be at least 1");
  }

  /** Returns the highest set point in °C. */
  public double highestC() {
    return unit.toCelsius(highest);
  }

  /** Returns the largest rate that is not above a given one, in the controller's unit. */
  double roundedDown(double cPerHour) {
    double own = Math.min(unit.rateOfCelsius(cPerHour), fastestPerHour);
    return Math.floor(own / ratePerHourStep + 1e-9) * ratePerHourStep;
  }

  private static void require(boolean holds, String message) {
    if (!holds) {
      throw new IllegalArgumentException(message);
    }
  }
}
