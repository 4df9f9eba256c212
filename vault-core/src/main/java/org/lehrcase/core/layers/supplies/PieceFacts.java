package org.lehrcase.core.layers.supplies;

import java.math.BigDecimal;
import org.lehrcase.core.course.AmountPer;

/**
 * What amounts are counted by.
 *
 * @param pieces of the same kind, 1 or a class
 * @param sheets of each
 * @param widthMm of a sheet
 * @param heightMm of a sheet
 * @param firings in all, for all pieces together
 */
public record PieceFacts(int pieces, int sheets, double widthMm, double heightMm, int firings) {
  private static final double MM_PER_M = 1000;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if one is out of range
   */
  public PieceFacts {
    if (pieces < 1 || pieces > 1000 || sheets < 1 || sheets > 200 || firings < 0) {
      throw new IllegalArgumentException("pieces, sheets and firings must be above 0");
    }
    if (!(widthMm > 0 && widthMm <= 5000 && heightMm > 0 && heightMm <= 5000)) {
      throw new IllegalArgumentException("sheet_mm must be above 0 and at most 5000 each way");
    }
  }

  /** Returns the square metres of all sheets. */
  public double areaM2() {
    return pieces * sheets * widthMm / MM_PER_M * heightMm / MM_PER_M;
  }

  /** Returns the metres round all pieces, each counted once and not for every sheet. */
  public double edgeM() {
    return pieces * 2 * (widthMm + heightMm) / MM_PER_M;
  }

  /** Returns by what an amount is multiplied. */
  BigDecimal times(AmountPer per) {
    return switch (per) {
      case PIECE -> BigDecimal.valueOf(pieces);
      case SHEET -> BigDecimal.valueOf((long) pieces * sheets);
      case AREA -> BigDecimal.valueOf(areaM2());
      case EDGE -> BigDecimal.valueOf(edgeM());
      case FIRING -> BigDecimal.valueOf(firings);
      case ONCE -> BigDecimal.ONE;
    };
  }
}
