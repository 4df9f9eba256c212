package org.lehrcase.bench.firing;

import java.util.List;
import java.util.Optional;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.plan.PlanWish;

/**
 * A request, read and checked.
 *
 * @param wish glass, block, task, caution
 * @param kiln the kiln
 * @param segments a schedule to simulate; empty to propose one
 * @param quench glass blown cold instead of a schedule
 * @param unknown paths of fields that mean nothing here
 */
record FiringRequest(
    PlanWish wish,
    KilnRequest kiln,
    List<FiringSegment> segments,
    Optional<Quench> quench,
    List<String> unknown) {
  /** Copies the lists. */
  public FiringRequest {
    segments = List.copyOf(segments);
    unknown = List.copyOf(unknown);
  }
}
