package org.lehrcase.core.glass;

import java.util.OptionalDouble;

/**
 * One line of a schedule: go to a temperature at a rate, then hold.
 *
 * @param name number or name of the step as written
 * @param rateCPerHour how fast, always above 0; empty if free, as the kiln can
 * @param targetC where to; empty if the kiln is switched off
 * @param holdMinutes how long the target is held, 0 or more
 * @param note anything else, or empty
 */
public record FiringSegment(
    String name,
    OptionalDouble rateCPerHour,
    OptionalDouble targetC,
    double holdMinutes,
    String note) {

  /** Says whether this line switches the kiln off. */
  public boolean isOff() {
    return targetC.isEmpty();
  }
}
