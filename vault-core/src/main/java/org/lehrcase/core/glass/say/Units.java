package org.lehrcase.core.glass.say;

import org.lehrcase.core.glass.TemperatureUnit;

/**
 * The units in which somebody reads.
 *
 * @param temperature unit of temperatures
 * @param inches whether lengths are in inches
 */
public record Units(TemperatureUnit temperature, boolean inches) {
  /** Degrees Celsius and millimetres: what files and command lines have. */
  public static final Units METRIC = new Units(TemperatureUnit.CELSIUS, false);

  /** Returns the sign of a degree. */
  public String sign() {
    return temperature == TemperatureUnit.FAHRENHEIT ? "°F" : "°C";
  }
}
