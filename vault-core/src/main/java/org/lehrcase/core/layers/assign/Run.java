package org.lehrcase.core.layers.assign;

/**
 * A row of values that is cut into runs, one run a sheet.
 *
 * @param values in the order of the row, which need not be sorted
 * @param weights above 0
 * @param runStart for each place the first one that may share a run with it; never falls
 * @param pins for each place the number of its run, 0 if any; two in one run are equal
 */
record Run(double[] values, double[] weights, int[] runStart, int[] pins) {
  /** Returns a row in which any neighbours may share a run. */
  static Run free(double[] values, double[] weights) {
    return new Run(values, weights, new int[values.length], new int[values.length]);
  }

  int size() {
    return values.length;
  }
}
