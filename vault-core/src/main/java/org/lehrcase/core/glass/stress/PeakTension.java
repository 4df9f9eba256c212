package org.lehrcase.core.glass.stress;

/**
 * The largest tension of a stretch of the firing, where and when.
 *
 * @param mpa the tension; 0 if there was none
 * @param depthMm below the top face
 * @param hours since the start
 * @param kilnC what the kiln showed then
 * @param line line of the schedule, from 0
 */
public record PeakTension(double mpa, double depthMm, double hours, double kilnC, int line) {
  /** No tension at all. */
  public static final PeakTension NONE = new PeakTension(0, 0, 0, 0, 0);

  /** Returns the larger of two. */
  public PeakTension or(PeakTension other) {
    return other.mpa > mpa ? other : this;
  }
}
