package org.lehrcase.core.glass.stress;

import org.lehrcase.core.glass.kind.GlassKind;

/**
 * How long a time step may be. After a kink of the kiln's curve differences spread like the square
 * root of time, so steps grow in proportion to the time since; where glass neither flows freely nor
 * is frozen the temperature may change little within one. The number of steps therefore depends on
 * kinks and degrees, not on the clock.
 *
 * @param timeConstantS slowest time constant of conduction in the slab
 * @param flowsFromC above this, flow is so fast that its history does not matter
 * @param frozenBelowC below this, nothing flows
 * @param refinement divides every step, for tests of convergence
 */
record StepSizes(double timeConstantS, double flowsFromC, double frozenBelowC, double refinement) {
  /** Quarter steps at a kink, fully implicit (Rannacher). */
  static final int START_STEPS = 4;

  private static final double FIRST = 0.003;
  private static final double GROWTH = 0.16;
  private static final double IMPLICIT_ABOVE = 0.5;
  private static final double KELVIN_IN_RANGE = 1.5;
  private static final double KELVIN_OUTSIDE = 8;
  private static final double SETTLING_SHARE = 0.04;
  private static final double FLOWS_LOG10 = 8.5;
  private static final double FROZEN_K = 150;

  static StepSizes of(GlassKind glass, double timeConstantS, double refinement) {
    return new StepSizes(
        timeConstantS,
        glass.viscosity().celsiusAt(FLOWS_LOG10),
        glass.viscosity().strainC() - FROZEN_K,
        refinement);
  }

  /** Returns the length of each of the first steps after a kink. */
  double startSeconds(KilnLeg leg) {
    double first = FIRST * timeConstantS / refinement;
    return Math.min(first, leg.seconds() / 2) / START_STEPS;
  }

  /**
   * How the glass changed in the last step.
   *
   * @param kelvinPerS the fastest layer
   * @param coldestC the coldest layer
   * @param hottestC the hottest layer
   */
  record GlassChange(double kelvinPerS, double coldestC, double hottestC) {
    static final GlassChange NONE = new GlassChange(0, 0, 0);
  }

  /** Returns the length of the next step, without regard to the end of the leg. */
  double seconds(KilnLeg leg, double secondsIn, double kilnC, GlassChange glass) {
    double growing = GROWTH * secondsIn;
    double coldest = Math.min(kilnC, glass.coldestC());
    double hottest = Math.max(kilnC, glass.hottestC());
    boolean outside = coldest > flowsFromC || hottest < frozenBelowC;
    double speed = Math.max(leg.speedAt(kilnC), glass.kelvinPerS());
    double changing = (outside ? KELVIN_OUTSIDE : KELVIN_IN_RANGE) / Math.max(speed, 1e-12);
    double settling =
        leg.settling().isPresent()
            ? SETTLING_SHARE * leg.settling().get().tauSeconds()
            : Double.MAX_VALUE;
    return Math.min(growing, Math.min(changing, settling)) / refinement;
  }

  /** Says whether a step is so long that only a fully implicit one is free of ripples. */
  boolean isImplicit(double seconds) {
    return seconds > IMPLICIT_ABOVE * timeConstantS;
  }
}
