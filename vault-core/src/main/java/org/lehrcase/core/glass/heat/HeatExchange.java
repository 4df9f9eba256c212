package org.lehrcase.core.glass.heat;

/**
 * What passes between a face and its surroundings for each kelvin: still air and radiation.
 *
 * @param airWPerM2K share of the air, 5 to 10 in a closed kiln
 * @param emissivity of the glass, 0.89 by EN 572-1; 0 for a given total without radiation
 */
public record HeatExchange(double airWPerM2K, double emissivity) {
  /** A closed kiln: air 7 W/(m² K), emissivity of glass 0.89. */
  public static final HeatExchange IN_KILN = new HeatExchange(7, 0.89);

  /** A lid opened in a room: 15 W/(m² K) in all. */
  public static final HeatExchange OPEN_LID = new HeatExchange(15, 0);

  private static final double STEFAN_BOLTZMANN = 5.670374e-8;
  private static final double ZERO_C_IN_K = 273.15;

  /** Returns the exchange between a face and surroundings at these temperatures, W/(m² K). */
  public double wPerM2K(double faceC, double aroundC) {
    double face = faceC + ZERO_C_IN_K;
    double around = aroundC + ZERO_C_IN_K;
    return airWPerM2K
        + emissivity * STEFAN_BOLTZMANN * (face * face + around * around) * (face + around);
  }
}
