package org.lehrcase.core.layers.block;

import java.util.List;

/**
 * Dams round a stack: four straight strips, each closing one side and covering the end of the next,
 * so that the same strips serve every size up to their own.
 *
 * @param stack what lies between
 * @param linerMm fibre paper between glass and dam, on every side
 * @param extraMm room left beside the liner, on every side
 * @param strip the strips
 */
public record DamBed(Stack stack, double linerMm, double extraMm, Strip strip) {
  private static final double GRAVITY = 9.81;

  /** Above the unfired pile. */
  private static final double ABOVE_PILE_MM = 6;

  /** The liner ends so far below the fused height, so that the rim rounds over. */
  private static final double LINER_BELOW_MM = 3;

  /**
   * Checks the room.
   *
   * @throws IllegalArgumentException if it is below 0
   */
  public DamBed {
    if (!(linerMm >= 0 && linerMm <= 20 && extraMm >= 0 && extraMm <= 50)) {
      throw new IllegalArgumentException("liner_mm must lie between 0 and 20");
    }
  }

  /**
   * A dam strip.
   *
   * @param thicknessMm how thick it is
   * @param heightMm how high it stands
   * @param densityKgPerM3 of its material; 2600 for mullite (from memory)
   * @param friction on the shelf; 0.5 (from memory)
   */
  public record Strip(double thicknessMm, double heightMm, double densityKgPerM3, double friction) {
    /** A mullite strip of a size. */
    public static Strip mullite(double thicknessMm, double heightMm) {
      return new Strip(thicknessMm, heightMm, 2600, 0.5);
    }

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if one is not above 0
     */
    public Strip {
      if (!(thicknessMm > 0 && heightMm > 0 && densityKgPerM3 > 0 && friction > 0)) {
        throw new IllegalArgumentException("a dam strip has a thickness and a height");
      }
    }
  }

  private double around() {
    return 2 * (linerMm + extraMm);
  }

  /** Returns the width from dam to dam. */
  public double bedWidthMm() {
    return stack.widthMm() + around();
  }

  /** Returns the other side from dam to dam. */
  public double bedHeightMm() {
    return stack.heightMm() + around();
  }

  /** Returns the least lengths of strips, two of each. */
  public List<Double> stripsMm() {
    return List.of(bedWidthMm() + strip.thicknessMm(), bedHeightMm() + strip.thicknessMm());
  }

  /**
   * Returns the room on the shelf.
   *
   * @param longerMm by how much the strips are longer than they must be
   */
  public List<Double> footprintMm(double longerMm) {
    return List.of(
        bedWidthMm() + 2 * strip.thicknessMm() + longerMm,
        bedHeightMm() + 2 * strip.thicknessMm() + longerMm);
  }

  /**
   * Returns how thick the block becomes where the glass can flow.
   *
   * @param floorMm how much of the liner's room the glass takes on every side: all of it if the
   *     paper gives way, 0 if the liner stands firm
   */
  public double fusedMm(double floorMm) {
    double wide = stack.widthMm() + 2 * (extraMm + floorMm);
    return stack.volumeMm3() / (wide * (stack.heightMm() + 2 * (extraMm + floorMm)));
  }

  /** Returns how high the liner stands. */
  public double linerHeightMm() {
    return Math.max(0, fusedMm(0) - LINER_BELOW_MM);
  }

  /** Returns how high the dams must be at least. */
  public double leastDamMm() {
    return stack.pileMm() + ABOVE_PILE_MM;
  }

  /** Says whether the strips are higher than the unfired pile with its reserve. */
  public boolean isHighEnough() {
    return strip.heightMm() >= leastDamMm();
  }

  /** Returns the push of fluid glass on a metre of dam, newtons. */
  public double thrustNewtonPerM() {
    double high = fusedMm(0) / 1000;
    return Stack.DENSITY_KG_PER_M3 * GRAVITY * high * high / 2;
  }

  /** Returns what holds a metre of strip against it, newtons. */
  public double gripNewtonPerM() {
    return strip.friction() * weightNewtonPerM();
  }

  private double weightNewtonPerM() {
    double section = strip.thicknessMm() / 1000 * strip.heightMm() / 1000;
    return section * strip.densityKgPerM3() * GRAVITY;
  }

  /** Says whether the strips neither slide nor fall over when all glass is fluid, unpropped. */
  public boolean standsAlone() {
    double tipping = thrustNewtonPerM() * fusedMm(0) / 1000 / 3;
    double standing = weightNewtonPerM() * strip.thicknessMm() / 1000 / 2;
    return gripNewtonPerM() > thrustNewtonPerM() && standing > tipping;
  }

  /**
   * Returns by how much the dams close on the glass when both cool.
   *
   * @param lengthMm of the glass
   * @param damPerK expansion of the dam
   * @param glassPerK expansion of the glass
   * @param coolingK below the strain point
   */
  public static double squeezeMm(
      double lengthMm, double damPerK, double glassPerK, double coolingK) {
    return lengthMm * (damPerK - glassPerK) * coolingK;
  }
}
