package org.lehrcase.core.glass.kiln;

import java.util.Collections;
import java.util.List;

/**
 * What a kilowatt hour costs over the day.
 *
 * @param currency as the person writes it
 * @param perKwh price of each hour of the day, 24 numbers of 0 or more
 */
public record Tariff(String currency, List<Double> perKwh) {
  private static final int HOURS = 24;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if there are not 24 prices of 0 or more
   */
  public Tariff {
    perKwh = List.copyOf(perKwh);
    if (perKwh.size() != HOURS || perKwh.stream().anyMatch(p -> !(p >= 0))) {
      throw new IllegalArgumentException("tariff: 24 prices of 0 or more, one for each hour");
    }
  }

  /** Makes a tariff of one price. */
  public static Tariff flat(String currency, double perKwh) {
    return new Tariff(currency, Collections.nCopies(HOURS, perKwh));
  }

  /** Returns the price in an hour of the local clock, 0 to 23. */
  public double perKwhAt(int hour) {
    return perKwh.get(hour);
  }
}
