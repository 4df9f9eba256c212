package org.lehrcase.core.glass.stress;

import java.util.ArrayList;
import java.util.List;

/**
 * Keeps enough of a run to draw it: a few hundred moments, the end of every line among them, and
 * the lag on every line.
 */
final class SampleBook {
  private static final int PARTS = 160;
  private static final double KELVIN = 6;

  private final double hoursApart;
  private final List<LayerSample> samples = new ArrayList<>();
  private final List<SimulatedFiring.LineLag> lags = new ArrayList<>();
  private double lastHours = Double.NEGATIVE_INFINITY;
  private double lastC;
  private double largestK;

  SampleBook(double totalHours) {
    this.hoursApart = totalHours / PARTS;
  }

  void note(StressWatch.Moment moment, double[] celsius, StressWatch watch) {
    largestK = Math.max(largestK, Math.abs(moment.kilnC() - celsius[0]));
    boolean later = moment.hours() - lastHours >= hoursApart;
    if (later || Math.abs(moment.kilnC() - lastC) >= KELVIN) {
      keep(moment, celsius, watch);
    }
  }

  /** Ends a leg; the moment is the last that was noted. */
  void endLine(KilnLeg leg, StressWatch.Moment moment, double[] celsius, StressWatch watch) {
    double atEnd = Math.abs(leg.toC() - celsius[0]);
    if (moment.hours() > lastHours) {
      keep(moment, celsius, watch);
    }
    int last = lags.size() - 1;
    if (last >= 0 && lags.get(last).line() == leg.line()) {
      double larger = Math.max(lags.get(last).largestK(), largestK);
      lags.set(last, new SimulatedFiring.LineLag(leg.line(), larger, atEnd));
    } else {
      lags.add(new SimulatedFiring.LineLag(leg.line(), largestK, atEnd));
    }
    largestK = 0;
  }

  List<LayerSample> samples() {
    return samples;
  }

  List<SimulatedFiring.LineLag> lags() {
    return lags;
  }

  private void keep(StressWatch.Moment moment, double[] celsius, StressWatch watch) {
    List<Double> temperatures = new ArrayList<>(celsius.length);
    List<Double> stresses = new ArrayList<>(celsius.length);
    for (int node = 0; node < celsius.length; node++) {
      temperatures.add(celsius[node]);
      stresses.add(watch.mpa(node));
    }
    samples.add(new LayerSample(moment.hours(), moment.kilnC(), temperatures, stresses));
    lastHours = moment.hours();
    lastC = moment.kilnC();
  }
}
