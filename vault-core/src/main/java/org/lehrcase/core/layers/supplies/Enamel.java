package org.lehrcase.core.layers.supplies;

/**
 * Enamel powder by weight.
 *
 * @param gramsPerM2 of powder in one coat, dry; measured by whoever paints
 * @param waste share more that stays on the palette, 0.15 to 0.3 (common practice, no source)
 */
public record Enamel(double gramsPerM2, double waste) {
  /** A painted coat where nobody has measured; 15 to 60 (common practice, no source). */
  public static final double PAINTED_G_PER_M2 = 30;

  private static final double MM2_PER_M2 = 1e6;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if they are none of a coat
   */
  public Enamel {
    if (!(gramsPerM2 > 0 && gramsPerM2 < 10_000 && waste >= 0 && waste <= 5)) {
      throw new IllegalArgumentException("g_per_m2 must be above 0, waste 0 or more");
    }
  }

  /**
   * Returns what one person and technique need, from a test tile.
   *
   * @param potBeforeG the mixed pot before
   * @param potAfterG the pot afterwards, with what went back into it
   * @param mediumPerPowder parts of medium to one part of powder
   * @param tileMm2 painted area
   */
  public static double calibrated(
      double potBeforeG, double potAfterG, double mediumPerPowder, double tileMm2) {
    if (!(potBeforeG > potAfterG && potAfterG >= 0 && mediumPerPowder >= 0 && tileMm2 > 0)) {
      throw new IllegalArgumentException("the pot must be lighter afterwards");
    }
    return (potBeforeG - potAfterG) / (1 + mediumPerPowder) / tileMm2 * MM2_PER_M2;
  }

  /** Returns the grams in a square metre of a film. */
  public static double ofFilm(double micrometres, double gramsPerCm3) {
    return micrometres * gramsPerCm3;
  }

  /**
   * Returns the grams of powder.
   *
   * @param areaMm2 of the sheet
   * @param covered share of it that is painted, 0 to 1
   * @param coats how many, or the film as a share of one coat
   */
  public double grams(double areaMm2, double covered, double coats) {
    return areaMm2 / MM2_PER_M2 * covered * coats * gramsPerM2 * (1 + waste);
  }
}
