package org.lehrcase.core.layers.optics;

/**
 * Seeing into glass through a flat face.
 *
 * @param index refractive index, 1.52 for soda-lime glass (from memory; kiln glasses 1.50 to 1.53)
 */
public record Refraction(double index) {
  /** Soda-lime glass. */
  public static final Refraction SODA_LIME = new Refraction(1.52);

  /**
   * Checks the index.
   *
   * @throws IllegalArgumentException if it is none of a glass
   */
  public Refraction {
    if (!(index > 1 && index < 3)) {
      throw new IllegalArgumentException("refractive_index must lie between 1 and 3");
    }
  }

  /** Returns the angle inside the glass (Snell). */
  public double insideDegrees(double airDegrees) {
    return Math.toDegrees(Math.asin(Math.sin(Math.toRadians(airDegrees)) / index));
  }

  /** Returns the angle beyond which no light leaves the glass. */
  public double criticalDegrees() {
    return Math.toDegrees(Math.asin(1 / index));
  }

  /** Returns the angle at which light of one polarisation is not reflected. */
  public double brewsterDegrees() {
    return Math.toDegrees(Math.atan(index));
  }

  /** Returns how deep something looks, straight in. */
  public double apparentMm(double depthMm) {
    return depthMm / index;
  }

  /** Returns how far aside a slanting look goes within the glass. */
  public double asideMm(double depthMm, double airDegrees) {
    return depthMm * Math.tan(Math.toRadians(insideDegrees(airDegrees)));
  }

  /** Returns the most that {@link #asideMm} can be, at a grazing look. */
  public double asideAtMostMm(double depthMm) {
    return depthMm / Math.sqrt(index * index - 1);
  }

  /**
   * Says whether the sides of a free-standing block, square and polished, mirror the picture
   * wherever one looks in from the front.
   */
  public boolean sidesMirror() {
    return index * index >= 2;
  }
}
