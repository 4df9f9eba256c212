package org.lehrcase.core.glass.plan;

/** How thick a stack becomes between its dams: volume is kept. */
public final class StackVolume {
  private static final double MM3_PER_M3 = 1e9;

  /** Surface tension of soda-lime glass at fusing heat, N/m. */
  private static final double SURFACE_N_PER_M = 0.315;

  private static final double GRAVITY = 9.81;

  private StackVolume() {}

  /**
   * Floor inside the dams, liner already taken off.
   *
   * @param lengthMm one side
   * @param widthMm the other
   * @param linerMm thickness of the compressed liner on each of the four sides
   */
  public record Bed(double lengthMm, double widthMm, double linerMm) {
    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if no floor is left
     */
    public Bed {
      if (!(lengthMm > 2 * linerMm && widthMm > 2 * linerMm && linerMm >= 0)) {
        throw new IllegalArgumentException("the dams leave no room for glass");
      }
    }

    double areaMm2() {
      return (lengthMm - 2 * linerMm) * (widthMm - 2 * linerMm);
    }
  }

  /** Returns the final thickness of sheets of one size, mm. */
  public static double ofSheets(int sheets, double sheetMm, double sheetAreaMm2, Bed bed) {
    if (sheets < 1 || !(sheetMm > 0 && sheetAreaMm2 > 0)) {
      throw new IllegalArgumentException("a stack has at least one sheet");
    }
    return sheets * sheetMm * sheetAreaMm2 / bed.areaMm2();
  }

  /** Returns the final thickness of glass by its weight, mm. */
  public static double ofWeight(double grams, double densityKgPerM3, Bed bed) {
    if (!(grams > 0 && densityKgPerM3 > 0)) {
      throw new IllegalArgumentException("glass weighs something");
    }
    return grams / 1000 / densityKgPerM3 * MM3_PER_M3 / bed.areaMm2();
  }

  /**
   * Returns how thick glass stays without dams: a wide puddle is held by its surface alone.
   *
   * @param densityKgPerM3 at fusing heat, about 2400
   * @param contactDegrees angle at its edge, 120 to 180 on kiln wash
   */
  public static double puddleMm(double densityKgPerM3, double contactDegrees) {
    double length = Math.sqrt(SURFACE_N_PER_M / (densityKgPerM3 * GRAVITY));
    return 2000 * length * Math.sin(Math.toRadians(contactDegrees) / 2);
  }
}
