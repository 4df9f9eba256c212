package org.lehrcase.core.glass;

/** The unit in which a schedule is written. */
public enum TemperatureUnit {
  /** Degrees Celsius. */
  CELSIUS(1.0, 0.0),
  /** Degrees Fahrenheit: 1.8 to the degree Celsius, and 32 at its zero. */
  FAHRENHEIT(1.8, 32.0);

  private final double degreesPerCelsius;
  private final double atZeroCelsius;

  TemperatureUnit(double degreesPerCelsius, double atZeroCelsius) {
    this.degreesPerCelsius = degreesPerCelsius;
    this.atZeroCelsius = atZeroCelsius;
  }

  /** Turns a temperature in this unit into degrees Celsius. */
  public double toCelsius(double temperature) {
    return (temperature - atZeroCelsius) / degreesPerCelsius;
  }

  /** Turns degrees Celsius into a temperature in this unit. */
  public double ofCelsius(double celsius) {
    return celsius * degreesPerCelsius + atZeroCelsius;
  }

  /** Turns a rate in this unit per hour into degrees Celsius per hour; no zero point enters. */
  public double rateToCelsius(double perHour) {
    return perHour / degreesPerCelsius;
  }

  /** Turns degrees Celsius per hour into a rate in this unit per hour. */
  public double rateOfCelsius(double celsiusPerHour) {
    return celsiusPerHour * degreesPerCelsius;
  }
}
