package org.lehrcase.core.glass.plan;

import java.util.OptionalDouble;
import org.lehrcase.core.glass.FiringSegment;

/**
 * A line of a plan and why it is as it is.
 *
 * @param stage what it is for
 * @param segment rate or free, target, hold
 * @param rateLimit why not faster
 * @param holdLimit why not shorter; the same as the rate's if nothing is held
 */
public record PlannedSegment(Stage stage, FiringSegment segment, Limit rateLimit, Limit holdLimit) {

  /** Makes a line with a rate. */
  static PlannedSegment ramp(Stage stage, double rateCPerHour, double targetC, Limit limit) {
    return new PlannedSegment(
        stage,
        new FiringSegment(
            stage.words(), OptionalDouble.of(rateCPerHour), OptionalDouble.of(targetC), 0, ""),
        limit,
        limit);
  }

  /** Makes a line on which the kiln is left to itself. */
  static PlannedSegment free(Stage stage, double targetC, Limit limit) {
    return new PlannedSegment(
        stage,
        new FiringSegment(stage.words(), OptionalDouble.empty(), OptionalDouble.of(targetC), 0, ""),
        limit,
        limit);
  }

  /** Returns the same line with a hold at its end. */
  PlannedSegment held(double minutes, Limit limit, String note) {
    return new PlannedSegment(
        stage,
        new FiringSegment(segment.name(), segment.rateCPerHour(), segment.targetC(), minutes, note),
        rateLimit,
        limit);
  }

  /** Returns the same line with another segment and a reason. */
  public PlannedSegment with(FiringSegment other, Limit limit) {
    return new PlannedSegment(stage, other, limit, holdLimit);
  }

  /** Returns what limits the line, in words. */
  public String limitedBy() {
    return rateLimit == holdLimit || segment.holdMinutes() <= 0
        ? rateLimit.words()
        : rateLimit.words() + "; hold: " + holdLimit.words();
  }
}
