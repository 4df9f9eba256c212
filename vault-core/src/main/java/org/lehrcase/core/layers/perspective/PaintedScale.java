package org.lehrcase.core.layers.perspective;

import java.util.ArrayList;
import java.util.List;

/** Sizes on sheets whose depths are logarithms of distances. */
public final class PaintedScale {
  /** The finest line that a brush holds, mm; common practice, no source. */
  public static final double FINEST_LINE_MM = 0.3;

  private PaintedScale() {}

  /** Returns the size on a sheet as a share of that on a reference sheet, at their mean depths. */
  public static double of(double depth, double referenceDepth) {
    return Math.exp(referenceDepth - depth);
  }

  /** Returns by how much a subject is drawn larger when it is moved to a sheet. */
  public static double moved(double ownDepth, double sheetDepth) {
    return Math.exp(ownDepth - sheetDepth);
  }

  /**
   * Returns how far below the horizon a foot stands after its subject was moved.
   *
   * @param belowHorizonMm before
   * @param factor by which the subject shrinks or grows
   */
  public static double footMm(double belowHorizonMm, double factor) {
    return belowHorizonMm * factor;
  }

  /** Returns the width of a line after shrinking, never finer than a brush. */
  public static double lineMm(double widthMm, double factor) {
    return Math.max(FINEST_LINE_MM, widthMm * factor);
  }

  /**
   * Returns even steps of depth, sheet by sheet from 1 down to a share.
   *
   * @param last size on the last sheet as a share of the first, above 0 and at most 1
   */
  public static List<Double> evenly(int sheets, double last) {
    return geometric(sheets, last);
  }

  /** A row of numbers from 1 to a last one, each the same part of the one before. */
  static List<Double> geometric(int sheets, double last) {
    if (sheets < 1 || !(last > 0 && last <= 1)) {
      throw new IllegalArgumentException("the last sheet keeps more than nothing, at most all");
    }
    List<Double> row = new ArrayList<>();
    for (int k = 0; k < sheets; k++) {
      row.add(sheets == 1 ? 1 : Math.pow(last, (double) k / (sheets - 1)));
    }
    return row;
  }
}
