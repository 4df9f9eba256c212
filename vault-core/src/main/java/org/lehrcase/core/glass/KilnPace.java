package org.lehrcase.core.glass;

/**
 * How fast a kiln goes where the schedule says "free", for drawing a schedule before anyone has
 * measured the kiln at hand.
 *
 * <p>Cooling follows Newton's law, T - room = (T0 - room) exp(-t / tau); heating is taken as a
 * straight line. Neither knows what is in the kiln, so times that contain a free stretch are
 * estimates and are to be shown as such.
 *
 * @param roomC temperature of the room, below every free target
 * @param coolingHours tau, the time in which the distance to the room falls to 37 %
 * @param heatingCPerHour free heating
 */
public record KilnPace(double roomC, double coolingHours, double heatingCPerHour) {

  /** A small studio kiln: room 20 °C, tau 3 h, 500 °C/h up. An assumption, not a measurement. */
  public static final KilnPace ASSUMED = new KilnPace(20, 3, 500);

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if a time or rate is not above 0
   */
  public KilnPace {
    if (!(coolingHours > 0 && heatingCPerHour > 0)) {
      throw new IllegalArgumentException("a kiln heats and cools at a rate above 0");
    }
  }

  /**
   * Returns the hours that the kiln needs by itself.
   *
   * @param fromC start
   * @param toC end; on the way down above the room, or it is never reached
   * @throws IllegalArgumentException if the end is at or below the room on the way down
   */
  public double freeHours(double fromC, double toC) {
    if (toC >= fromC) {
      return (toC - fromC) / heatingCPerHour;
    }
    if (toC <= roomC) {
      throw new IllegalArgumentException("a kiln does not cool below its room by itself");
    }
    return coolingHours * Math.log((fromC - roomC) / (toC - roomC));
  }

  /** Returns the temperature after cooling freely for some hours. */
  public double cooledC(double fromC, double hours) {
    return roomC + (fromC - roomC) * Math.exp(-hours / coolingHours);
  }
}
