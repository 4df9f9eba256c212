package org.lehrcase.core.layers.cut;

/**
 * A rectangle that is wanted.
 *
 * @param name for the list
 * @param widthUm micrometres
 * @param heightUm micrometres
 * @param count how many; {@link #AS_MANY_AS_FIT} for no limit
 * @param value of one of them, for choosing what to cut; at least 0
 */
public record CutPiece(String name, int widthUm, int heightUm, int count, double value) {
  /** No limit. */
  public static final int AS_MANY_AS_FIT = -1;

  /** Most pieces of one size. */
  public static final int MOST = 1000;

  /** Longest side of anything, 5 m. */
  static final int LONGEST_UM = 5_000_000;

  private static final double DEAREST = 1e12;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if a side, the count or the value is out of range
   */
  public CutPiece {
    if (widthUm < 1 || heightUm < 1 || widthUm > LONGEST_UM || heightUm > LONGEST_UM) {
      throw new IllegalArgumentException("w_mm and h_mm must be above 0 and at most 5000");
    }
    if (count != AS_MANY_AS_FIT && (count < 1 || count > MOST)) {
      throw new IllegalArgumentException("count must be 1 to 1000, or null for as many as fit");
    }
    if (!(value >= 0 && value <= DEAREST)) {
      throw new IllegalArgumentException("value must be 0 or more");
    }
  }

  /** Returns how many there may be in an area. */
  int limit(long areaUm2) {
    long most = Math.min(MOST, areaUm2 / ((long) widthUm * heightUm));
    return (int) (count == AS_MANY_AS_FIT ? most : Math.min(most, count));
  }
}
