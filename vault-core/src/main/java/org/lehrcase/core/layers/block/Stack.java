package org.lehrcase.core.layers.block;

/**
 * Sheets of one size, one on another.
 *
 * @param sheets how many
 * @param widthMm of each
 * @param heightMm of each, as it stands finished
 * @param thicknessMm of each
 */
public record Stack(int sheets, double widthMm, double heightMm, double thicknessMm) {
  /** Soda-lime glass (EN 572-1), 2.5 g for a square centimetre of one centimetre. */
  public static final double DENSITY_KG_PER_M3 = 2500;

  /** Between unfired painted sheets; dust and relief of paint, common practice, no source. */
  public static final double GAP_MM = 0.3;

  private static final double MM3_PER_M3 = 1e9;
  private static final double LARGEST_MM = 5000;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if there is no sheet or a side is not one of a sheet
   */
  public Stack {
    if (sheets < 1 || sheets > 200) {
      throw new IllegalArgumentException("sheets must be 1 to 200");
    }
    if (!(widthMm > 0 && widthMm <= LARGEST_MM && heightMm > 0 && heightMm <= LARGEST_MM)) {
      throw new IllegalArgumentException("sheet_mm must be above 0 and at most 5000 each way");
    }
    if (!(thicknessMm > 0 && thicknessMm <= 50)) {
      throw new IllegalArgumentException("thickness_mm must be above 0 and at most 50");
    }
  }

  /** Returns the height of the pile without gaps. */
  public double glassMm() {
    return sheets * thicknessMm;
  }

  /** Returns the height of the unfired, painted pile. */
  public double pileMm() {
    return glassMm() + (sheets - 1) * GAP_MM;
  }

  /** Returns the volume in cubic millimetres. */
  public double volumeMm3() {
    return widthMm * heightMm * glassMm();
  }

  /** Returns what it weighs. */
  public double grams() {
    return grams(volumeMm3());
  }

  /** Returns the weight of some glass. */
  public static double grams(double volumeMm3) {
    return volumeMm3 * DENSITY_KG_PER_M3 / MM3_PER_M3 * 1000;
  }

  /** Returns the true thickness of a sheet by weighing it. */
  public static double thicknessMm(double grams, double areaMm2) {
    if (!(grams > 0 && areaMm2 > 0)) {
      throw new IllegalArgumentException("a sheet has a weight and an area");
    }
    return grams / 1000 / DENSITY_KG_PER_M3 * MM3_PER_M3 / areaMm2;
  }
}
