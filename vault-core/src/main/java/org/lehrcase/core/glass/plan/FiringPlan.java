package org.lehrcase.core.glass.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.glass.FiringSegment;

/**
 * A proposed firing.
 *
 * @param wish what was asked for
 * @param segments its lines
 * @param anneal soak and slopes that it uses
 * @param computed soak and slopes from the glass's figures alone
 * @param makers soak and slopes of the maker's table, if there is one for this thickness
 * @param lidC where the lid may open
 */
public record FiringPlan(
    PlanWish wish,
    List<PlannedSegment> segments,
    Anneal anneal,
    Anneal computed,
    Optional<Anneal> makers,
    double lidC) {
  /** Copies the list. */
  public FiringPlan {
    segments = List.copyOf(segments);
  }

  /** Returns the lines without reasons. */
  public List<FiringSegment> lines() {
    List<FiringSegment> lines = new ArrayList<>();
    for (PlannedSegment segment : segments) {
      lines.add(segment.segment());
    }
    return lines;
  }
}
