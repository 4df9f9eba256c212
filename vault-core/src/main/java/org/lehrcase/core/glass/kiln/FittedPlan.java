package org.lehrcase.core.glass.kiln;

import java.util.List;
import java.util.Optional;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.say.Phrase;

/**
 * A plan as a controller can run it: rounded to the safe side, merged, or refused.
 *
 * @param lines what the kiln will do, in °C; empty if refused
 * @param typed what is typed in, in the controller's unit; empty if refused
 * @param changes what was merged, split or made a staircase, in words
 * @param refusal why the controller cannot run it; empty if it can
 */
public record FittedPlan(
    List<PlannedSegment> lines,
    List<TypedLine> typed,
    List<String> changes,
    Optional<Phrase> refusal) {
  /** Copies the lists. */
  public FittedPlan {
    lines = List.copyOf(lines);
    typed = List.copyOf(typed);
    changes = List.copyOf(changes);
  }

  static FittedPlan refused(List<String> changes, Phrase reason) {
    return new FittedPlan(List.of(), List.of(), changes, Optional.of(reason));
  }

  /** Says whether the controller can run it. */
  public boolean isRunnable() {
    return refusal.isEmpty();
  }

  /** Returns the lines without reasons, for a simulation of what will really happen. */
  public List<FiringSegment> segments() {
    return lines.stream().map(PlannedSegment::segment).toList();
  }
}
