package org.lehrcase.core.glass.stress;

import java.util.Collections;
import java.util.List;

/**
 * What one way of looking at the block finds.
 *
 * @param relaxation how the glass is taken to flow
 * @param support what keeps it from bending
 * @param heating largest tension before the highest temperature
 * @param cooling largest tension after it
 * @param residualMpa what remains for good, from the deepest layer to the exposed face
 * @param imbalancePa largest mean stress over the depth at any step; 0 but for rounding
 */
public record StressOutcome(
    Relaxation relaxation,
    Support support,
    PeakTension heating,
    PeakTension cooling,
    List<Double> residualMpa,
    double imbalancePa) {
  /** Copies the list. */
  public StressOutcome {
    residualMpa = List.copyOf(residualMpa);
  }

  /** Returns the largest tension at any time. */
  public PeakTension peak() {
    return heating.or(cooling);
  }

  /** Returns the largest tension that remains, which lies in the core. */
  public double residualCoreMpa() {
    return Collections.max(residualMpa);
  }

  /** Returns what remains in the exposed face; below 0, as it is pressed together. */
  public double residualFaceMpa() {
    return residualMpa.get(residualMpa.size() - 1);
  }
}
