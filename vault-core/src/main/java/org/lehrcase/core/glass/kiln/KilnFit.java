package org.lehrcase.core.glass.kiln;

import java.util.List;
import org.lehrcase.core.glass.KilnPace;

/** A kiln's own pace from a few readings of clock and display. */
public final class KilnFit {
  private static final int FEWEST = 2;

  private KilnFit() {}

  /**
   * A reading.
   *
   * @param hours on any clock
   * @param celsius what the display showed
   */
  public record Reading(double hours, double celsius) {}

  /**
   * Fits cooling with the power off: the logarithm of the distance to the room falls evenly.
   *
   * @param readings at least two, each above the room, not all at the same time
   * @param roomC the room
   * @return hours in which the distance falls to 37 %
   * @throws IllegalArgumentException if the readings do not show a kiln that cools
   */
  public static double coolingHours(List<Reading> readings, double roomC) {
    if (readings.stream().anyMatch(r -> !(r.celsius() > roomC + 1))) {
      throw new IllegalArgumentException("a reading lies at or below the room; leave it out");
    }
    double perHour =
        slope(
            readings.stream()
                .map(r -> new Reading(r.hours(), Math.log(r.celsius() - roomC)))
                .toList());
    if (!(perHour < 0)) {
      throw new IllegalArgumentException("the readings do not fall; was the power off?");
    }
    return -1 / perHour;
  }

  /**
   * Fits heating at full power by a straight line.
   *
   * @param readings at least two, not all at the same time
   * @return °C per hour
   * @throws IllegalArgumentException if the readings do not rise
   */
  public static double heatingCPerHour(List<Reading> readings) {
    double perHour = slope(readings);
    if (!(perHour > 0)) {
      throw new IllegalArgumentException("the readings do not rise; was the power on?");
    }
    return perHour;
  }

  /** Fits both. */
  public static KilnPace pace(List<Reading> heating, List<Reading> cooling, double roomC) {
    return new KilnPace(roomC, coolingHours(cooling, roomC), heatingCPerHour(heating));
  }

  /**
   * Returns what the walls lose for each kelvin, W/K, from a long hold.
   *
   * @param duty share of the time that the elements are on, above 0, at most 1
   * @param ratedW power when they are on
   * @param holdC temperature of the hold
   * @param roomC the room
   */
  public static double lossWPerK(double duty, double ratedW, double holdC, double roomC) {
    if (!(duty > 0 && duty <= 1 && ratedW > 0 && holdC > roomC)) {
      throw new IllegalArgumentException("duty is a share of the time, and the hold is hot");
    }
    return duty * ratedW / (holdC - roomC);
  }

  private static double slope(List<Reading> readings) {
    if (readings.size() < FEWEST) {
      throw new IllegalArgumentException("two readings are needed, better four");
    }
    double hours = readings.stream().mapToDouble(Reading::hours).average().orElse(0);
    double value = readings.stream().mapToDouble(Reading::celsius).average().orElse(0);
    double across = 0;
    double square = 0;
    for (Reading reading : readings) {
      across += (reading.hours() - hours) * (reading.celsius() - value);
      square += (reading.hours() - hours) * (reading.hours() - hours);
    }
    if (!(square > 0)) {
      throw new IllegalArgumentException("all readings have the same time");
    }
    return across / square;
  }
}
