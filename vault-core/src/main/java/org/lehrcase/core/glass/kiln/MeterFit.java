package org.lehrcase.core.glass.kiln;

import java.util.List;
import org.lehrcase.core.glass.CurvePoint;
import org.lehrcase.core.glass.KilnPace;

/**
 * A kiln's loss from what an electricity meter counted during a firing.
 *
 * <p>Energy is loss times ∫ max(0, T − room + τ dT/dt) dt, with τ the time in which the kiln cools
 * by itself; so each span between two readings gives the loss, and several give it by least
 * squares.
 */
public final class MeterFit {
  private static final double STEP_HOURS = 1 / 60.0;
  private static final double W_PER_KW = 1000;

  private MeterFit() {}

  /**
   * What was counted between two looks at the meter.
   *
   * @param fromHours first look, hours after the start
   * @param toHours second look
   * @param kilowattHours difference of both
   */
  public record Span(double fromHours, double toHours, double kilowattHours) {}

  /**
   * Returns the loss, W/K.
   *
   * @param curve what the kiln did, points that straight lines join
   * @param spans at least one in which the meter moved
   * @param pace how the kiln goes by itself
   * @throws IllegalArgumentException if no loss follows
   */
  public static double lossWPerK(List<CurvePoint> curve, List<Span> spans, KilnPace pace) {
    double across = 0;
    double square = 0;
    for (Span span : spans) {
      double kelvinHours = kelvinHours(curve, span, pace);
      across += kelvinHours * span.kilowattHours() * W_PER_KW;
      square += kelvinHours * kelvinHours;
    }
    if (spans.isEmpty() || !(square > 0)) {
      throw new IllegalArgumentException(
          "the meter must be read twice while the elements work; better four times");
    }
    if (!(across > 0)) {
      throw new IllegalArgumentException("the meter did not move between its readings");
    }
    return across / square;
  }

  private static double kelvinHours(List<CurvePoint> curve, Span span, KilnPace pace) {
    double sum = 0;
    for (int i = 1; i < curve.size(); i++) {
      CurvePoint from = curve.get(i - 1);
      CurvePoint to = curve.get(i);
      double start = Math.max(span.fromHours(), from.hours());
      double end = Math.min(span.toHours(), to.hours());
      if (end > start) {
        double perHour = (to.celsius() - from.celsius()) / (to.hours() - from.hours());
        int steps = (int) Math.ceil((end - start) / STEP_HOURS);
        double length = (end - start) / steps;
        for (int step = 0; step < steps; step++) {
          double celsius =
              from.celsius() + perHour * (start + (step + 0.5) * length - from.hours());
          double need = celsius - pace.roomC() + pace.coolingHours() * perHour;
          sum += Math.max(0, need) * length;
        }
      }
    }
    return sum;
  }
}
