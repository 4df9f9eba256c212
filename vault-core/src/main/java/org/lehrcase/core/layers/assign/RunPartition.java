package org.lehrcase.core.layers.assign;

import java.util.Arrays;

/**
 * Cuts a row into runs of least weighted squared deviation, exactly: for every place and number of
 * runs the best end of the run before (Fisher 1958). Runs are only left empty when there are more
 * runs than values, or where a pin asks for it.
 */
public final class RunPartition {
  private static final double SAME = 1e-12;

  private final Run run;
  private final double[] weight;
  private final double[] first;
  private final double[] second;
  private final int[] lastPinned;
  private final double[][] spread;
  private final int[][] used;
  private final int[][] from;
  private final double grain;

  RunPartition(Run run, int runs) {
    this.run = run;
    int n = run.size();
    weight = new double[n + 1];
    first = new double[n + 1];
    second = new double[n + 1];
    lastPinned = new int[n + 1];
    sumUp(n);
    grain = SAME * Math.max(second[n], Double.MIN_NORMAL);
    spread = new double[runs + 1][n + 1];
    used = new int[runs + 1][n + 1];
    from = new int[runs + 1][n + 1];
    Arrays.fill(spread[0], 1, n + 1, Double.POSITIVE_INFINITY);
    for (int k = 1; k <= runs; k++) {
      for (int end = 0; end <= n; end++) {
        fill(k, end);
      }
    }
  }

  /**
   * Cuts sorted values.
   *
   * @param values ascending
   * @param weights above 0, as many
   * @param runs at most so many runs, at least 1
   */
  public static RunPartition of(double[] values, double[] weights, int runs) {
    if (values.length != weights.length || values.length == 0 || runs < 1) {
      throw new IllegalArgumentException("a row needs as many weights as values, and a run");
    }
    return new RunPartition(Run.free(values, weights), runs);
  }

  /** Sums of centred values: nearly equal ones would lose all their digits otherwise. */
  private void sumUp(int n) {
    double mean = mean();
    lastPinned[0] = -1;
    for (int i = 0; i < n; i++) {
      double w = run.weights()[i];
      double z = run.values()[i] - mean;
      weight[i + 1] = weight[i] + w;
      first[i + 1] = first[i] + w * z;
      second[i + 1] = second[i] + w * z * z;
      lastPinned[i + 1] = run.pins()[i] > 0 ? i : lastPinned[i];
    }
  }

  private double mean() {
    double sum = 0;
    double all = 0;
    for (int i = 0; i < run.size(); i++) {
      sum += run.weights()[i] * run.values()[i];
      all += run.weights()[i];
    }
    return sum / all;
  }

  private void fill(int k, int end) {
    spread[k][end] = spread[k - 1][end]; // run k stays empty
    used[k][end] = used[k - 1][end];
    from[k][end] = end;
    if (end == 0) {
      return;
    }
    for (int start = end - 1; start >= run.runStart()[end - 1]; start--) {
      int pinned = lastPinned[end];
      if (pinned >= start && run.pins()[pinned] != k) {
        break;
      }
      double total = spread[k - 1][start] + within(start, end);
      int runs = used[k - 1][start] + 1;
      boolean better = total < spread[k][end] - grain;
      boolean same = total <= spread[k][end] + grain && Double.isFinite(total);
      if (better || same && runs > used[k][end]) {
        spread[k][end] = better ? total : Math.min(total, spread[k][end]);
        used[k][end] = runs;
        from[k][end] = start;
      }
    }
  }

  /** Weighted squared deviation of the places from {@code start} to before {@code end}. */
  private double within(int start, int end) {
    double w = weight[end] - weight[start];
    double s = first[end] - first[start];
    return Math.max(0, second[end] - second[start] - s * s / w);
  }

  /** Returns the least spread with so many runs; infinite if it cannot be done. */
  public double spread(int runs) {
    return spread[runs][run.size()];
  }

  /** Returns the number of the run of each place, from 1. */
  public int[] runs(int runs) {
    if (Double.isInfinite(spread(runs))) {
      throw new IllegalStateException("this row cannot be cut so");
    }
    int[] number = new int[run.size()];
    int end = run.size();
    for (int k = runs; k > 0; k--) {
      Arrays.fill(number, from[k][end], end, k);
      end = from[k][end];
    }
    return number;
  }
}
