package org.lehrcase.core.glass.stress;

import java.util.List;

/**
 * What a firing does to a block.
 *
 * @param hours from the start to the end of the last leg
 * @param bonded whether loose sheets grew together, or the block was one from the start
 * @param lags how far the core stays behind, by line of the schedule
 * @param endCoreC core at the end
 * @param outcomes stress, one for each way of looking: with and without structural relaxation, held
 *     flat and free to bow (alike if both faces are exposed)
 * @param samples the block over time, with the end of every leg among them
 * @param steps time steps taken
 */
public record SimulatedFiring(
    double hours,
    boolean bonded,
    List<LineLag> lags,
    double endCoreC,
    List<StressOutcome> outcomes,
    List<LayerSample> samples,
    int steps) {

  /**
   * How the core follows on a line of the schedule.
   *
   * @param line line of the schedule, from 0
   * @param largestK largest distance between kiln and core
   * @param atEndK that distance at the end of the line
   */
  public record LineLag(int line, double largestK, double atEndK) {}

  /** Copies the lists. */
  public SimulatedFiring {
    lags = List.copyOf(lags);
    outcomes = List.copyOf(outcomes);
    samples = List.copyOf(samples);
  }

  /** Returns one way of looking at the stress. */
  public StressOutcome outcome(Relaxation relaxation, Support support) {
    for (StressOutcome outcome : outcomes) {
      if (outcome.relaxation() == relaxation && outcome.support() == support) {
        return outcome;
      }
    }
    throw new IllegalStateException("not looked at: " + relaxation + ", " + support);
  }

  /** Returns the sample nearest to a time, hours since the start. */
  public LayerSample at(double hours) {
    LayerSample nearest = samples.get(0);
    for (LayerSample sample : samples) {
      if (Math.abs(sample.hours() - hours) < Math.abs(nearest.hours() - hours)) {
        nearest = sample;
      }
    }
    return nearest;
  }

  /** Returns the figure to show first: with structural relaxation, held flat. */
  public StressOutcome main() {
    return outcome(Relaxation.STRUCTURAL, Support.HELD_FLAT);
  }
}
