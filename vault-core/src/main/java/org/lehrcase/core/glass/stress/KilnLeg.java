package org.lehrcase.core.glass.stress;

import java.util.Optional;
import org.lehrcase.core.glass.heat.HeatExchange;

/**
 * A piece of the kiln's curve without a kink inside.
 *
 * @param line line of the schedule that it belongs to, from 0
 * @param fromC temperature at its start
 * @param toC temperature at its end
 * @param seconds how long it lasts, above 0
 * @param settling how a kiln left to itself goes; empty if the temperature changes evenly
 * @param exchange how heat passes to the block; empty if its face follows the kiln at once, which
 *     is the harder case
 */
public record KilnLeg(
    int line,
    double fromC,
    double toC,
    double seconds,
    Optional<Settling> settling,
    Optional<HeatExchange> exchange) {

  /**
   * A kiln that runs towards a temperature that it never reaches.
   *
   * @param towardsC that temperature
   * @param tauSeconds time in which the distance to it falls to 37 %
   */
  public record Settling(double towardsC, double tauSeconds) {}

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if the leg takes no time or is not made of numbers
   */
  public KilnLeg {
    if (!(seconds > 0 && Double.isFinite(seconds) && Double.isFinite(fromC + toC))) {
      throw new IllegalArgumentException("a leg of a firing takes time");
    }
  }

  /** Makes a leg on which the face follows the kiln, evenly from one temperature to another. */
  public static KilnLeg even(int line, double fromC, double toC, double seconds) {
    return new KilnLeg(line, fromC, toC, seconds, Optional.empty(), Optional.empty());
  }

  /** Makes a leg on which the kiln is left to itself. */
  public static KilnLeg free(int line, double fromC, double toC, Settling settling) {
    double seconds =
        settling.tauSeconds()
            * Math.log((fromC - settling.towardsC()) / (toC - settling.towardsC()));
    return new KilnLeg(
        line, fromC, toC, seconds, Optional.of(settling), Optional.of(HeatExchange.IN_KILN));
  }

  /** Returns the kiln's temperature some seconds after the start of the leg, °C. */
  public double celsiusAt(double secondsIn) {
    if (settling.isEmpty()) {
      return fromC + (toC - fromC) * Math.min(1, secondsIn / seconds);
    }
    Settling s = settling.get();
    return s.towardsC() + (fromC - s.towardsC()) * Math.exp(-secondsIn / s.tauSeconds());
  }

  /** Returns how fast the temperature changes, without sign, K/s. */
  double speedAt(double celsius) {
    if (settling.isEmpty()) {
      return Math.abs(toC - fromC) / seconds;
    }
    Settling s = settling.get();
    return Math.abs(celsius - s.towardsC()) / s.tauSeconds();
  }
}
