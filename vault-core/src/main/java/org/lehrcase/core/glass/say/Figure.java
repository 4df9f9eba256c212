package org.lehrcase.core.glass.say;

import org.lehrcase.core.glass.TemperatureUnit;

/**
 * A number in a sentence.
 *
 * @param value in the unit of its quantity
 * @param quantity what it is
 * @param digits digits behind the point that it is worth in that unit, 0 to 3
 */
public record Figure(double value, Quantity quantity, int digits) {
  private static final int MOST_DIGITS = 3;
  private static final double MM_PER_INCH = 25.4;

  /**
   * Checks the digits.
   *
   * @throws IllegalArgumentException if they are not 0 to 3
   */
  public Figure {
    if (digits < 0 || digits > MOST_DIGITS) {
      throw new IllegalArgumentException("a figure has 0 to 3 digits behind the point");
    }
  }

  /** Makes a temperature in whole degrees. */
  public static Figure celsius(double celsius) {
    return new Figure(celsius, Quantity.TEMPERATURE, 0);
  }

  /** Makes a difference of temperatures in whole degrees. */
  public static Figure kelvin(double kelvin) {
    return new Figure(kelvin, Quantity.DIFFERENCE, 0);
  }

  /** Makes a rate in whole degrees an hour. */
  public static Figure rate(double celsiusPerHour) {
    return new Figure(celsiusPerHour, Quantity.RATE, 0);
  }

  /** Makes a length; a tenth of a millimetre is shown where there is one. */
  public static Figure length(double mm) {
    return new Figure(mm, Quantity.LENGTH, 1);
  }

  /** Makes a plain number. */
  public static Figure number(double value, int digits) {
    return new Figure(value, Quantity.NUMBER, digits);
  }

  /** Returns the figure with its unit. */
  public String in(Units units) {
    TemperatureUnit degree = units.temperature();
    String sign = units.sign();
    return switch (quantity) {
      case TEMPERATURE -> fixed(degree.ofCelsius(value), digits) + " " + sign;
      case DIFFERENCE ->
          fixed(degree.rateOfCelsius(value), digits)
              + (degree == TemperatureUnit.CELSIUS ? " K" : " " + sign);
      case RATE -> fixed(degree.rateOfCelsius(value), digits) + " " + sign + "/h";
      case LENGTH ->
          units.inches()
              ? fixed(value / MM_PER_INCH, 2) + " in"
              : withoutZero(fixed(value, digits)) + " mm";
      case NUMBER -> fixed(value, digits);
    };
  }

  private static String withoutZero(String number) {
    return number.endsWith(".0") ? number.substring(0, number.length() - 2) : number;
  }

  /** Rounds half up and writes every digit: the same in every country, and no format is parsed. */
  private static String fixed(double number, int digits) {
    if (!Double.isFinite(number)) {
      return String.valueOf(number);
    }
    long scale = Math.round(Math.pow(10, digits));
    long whole = Math.round(Math.abs(number) * scale);
    var text = new StringBuilder();
    if (number < 0 && whole > 0) {
      text.append('-');
    }
    text.append(whole / scale);
    if (digits > 0) {
      // the scale in front keeps the zeros behind the point
      text.append('.').append(String.valueOf(scale + whole % scale), 1, digits + 1);
    }
    return text.toString();
  }
}
