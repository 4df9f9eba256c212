package org.lehrcase.core.layers.assign;

import java.util.Arrays;

/** What a plan costs: Σ w (z − mean of its sheet)², and the sizes that come out wrong by it. */
final class Spread {
  private Spread() {}

  /** Returns the weighted mean depth of each sheet, sheet 1 first; NaN for a clear one. */
  static double[] means(Scene scene, int[] sheetOf, int sheets) {
    double[] mean = new double[sheets];
    for (int k = 1; k <= sheets; k++) {
      mean[k - 1] = mean(scene, sheetOf, k);
    }
    return mean;
  }

  private static double mean(Scene scene, int[] sheetOf, int sheet) {
    double from = Double.NaN;
    double sum = 0;
    double weight = 0;
    for (int i = 0; i < sheetOf.length; i++) {
      if (sheetOf[i] == sheet) {
        Subject subject = scene.subjects().get(i);
        from = weight == 0 ? subject.depth() : from;
        sum += subject.weight() * (subject.depth() - from);
        weight += subject.weight();
      }
    }
    return from + sum / weight;
  }

  /** Returns the spread, summed afresh sheet by sheet. */
  static double of(Scene scene, int[] sheetOf) {
    double[] mean = means(scene, sheetOf, Arrays.stream(sheetOf).max().orElse(0));
    double sum = 0;
    for (int i = 0; i < sheetOf.length; i++) {
      double off = scene.subjects().get(i).depth() - mean[sheetOf[i] - 1];
      sum += scene.subjects().get(i).weight() * off * off;
    }
    return sum;
  }

  /** Returns the greatest wrong size within a sheet, as a share: 0.1 for a tenth. */
  static double worstSize(Scene scene, int[] sheetOf) {
    double[] mean = means(scene, sheetOf, Arrays.stream(sheetOf).max().orElse(0));
    double worst = 0;
    for (int i = 0; i < sheetOf.length; i++) {
      double off = scene.subjects().get(i).depth() - mean[sheetOf[i] - 1];
      worst = Math.max(worst, Math.abs(off));
    }
    return Math.expm1(worst);
  }

  /** Returns what a plan on a single sheet would cost. */
  static double whole(Scene scene) {
    int[] one = new int[scene.size()];
    Arrays.fill(one, 1);
    return of(scene, one);
  }

  /**
   * Returns how much a plan puts farther subjects in front of nearer ones: Σ (z front − z behind).
   */
  static double reversals(Scene scene, int[] sheetOf) {
    double sum = 0;
    for (int i = 0; i < sheetOf.length; i++) {
      for (int j = 0; j < sheetOf.length; j++) {
        double by = scene.subjects().get(i).depth() - scene.subjects().get(j).depth();
        sum += sheetOf[i] < sheetOf[j] && by > 0 ? by : 0;
      }
    }
    return sum;
  }
}
