package org.lehrcase.core.glass.kiln;

/**
 * What a kiln needs to stay hot and to get hot.
 *
 * @param lossWPerK what its walls lose for each kelvin above the room
 * @param heatJPerK what warms it by one kelvin, load included: loss times cooling time
 * @param ratedW what its elements can give
 */
public record KilnPower(double lossWPerK, double heatJPerK, double ratedW) {
  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if one is not above 0
   */
  public KilnPower {
    if (!(lossWPerK > 0 && heatJPerK > 0 && ratedW > 0)) {
      throw new IllegalArgumentException("loss, heat and rated power are above 0");
    }
  }

  /** Takes the heat from the loss and the time in which the kiln cools by itself. */
  public static KilnPower of(double lossWPerK, double coolingHours, double ratedW) {
    return new KilnPower(lossWPerK, lossWPerK * coolingHours * 3600, ratedW);
  }

  /** Returns what the elements give while the kiln changes at a rate; never below 0, W. */
  public double wattsAt(double aboveRoomK, double kelvinPerS) {
    return Math.max(0, lossWPerK * aboveRoomK + heatJPerK * kelvinPerS);
  }
}
