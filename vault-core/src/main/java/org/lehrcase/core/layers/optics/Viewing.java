package org.lehrcase.core.layers.optics;

/**
 * Whoever looks at the piece.
 *
 * @param distanceMm from the eye to the front face, above 0
 * @param asideMm how far the eye goes to either side of the middle
 */
public record Viewing(double distanceMm, double asideMm) {
  /** Between two eyes. */
  public static final double EYES_MM = 65;

  private static final double ARC_MINUTE = Math.PI / 180 / 60;

  /**
   * Checks the place.
   *
   * @throws IllegalArgumentException if the eye would touch the glass
   */
  public Viewing {
    if (!(distanceMm > 0 && distanceMm < 1e6 && asideMm >= 0 && asideMm < 1e6)) {
      throw new IllegalArgumentException("viewing distance must be above 0");
    }
  }

  /** Returns the greatest angle at which the far edge of an opening is seen. */
  public double steepestDegrees(double openingMm) {
    return Math.toDegrees(Math.atan((openingMm / 2 + asideMm) / distanceMm));
  }

  /**
   * Returns where on the front face a mark behind it is seen, from the foot of the mark, when the
   * eye is aside.
   *
   * @param depthMm of the mark
   * @param eyeMm how far the eye is aside of the mark
   */
  public double shiftMm(double depthMm, double eyeMm, Refraction glass) {
    double low = 0;
    double high = eyeMm;
    for (int i = 0; i < 200; i++) {
      double x = (low + high) / 2;
      double angle = Math.toDegrees(Math.atan((eyeMm - x) / distanceMm));
      if (glass.asideMm(depthMm, angle) > x) {
        low = x;
      } else {
        high = x;
      }
    }
    return (low + high) / 2;
  }

  /** Returns the same for small angles. */
  public double nearShiftMm(double depthMm, double eyeMm, Refraction glass) {
    double seen = glass.apparentMm(depthMm);
    return eyeMm * seen / (distanceMm + seen);
  }

  /** Returns the angle, in radians, by which two eyes see a mark and the face before it apart. */
  public double disparity(double depthMm, Refraction glass) {
    double seen = glass.apparentMm(depthMm);
    return EYES_MM * seen / (distanceMm * (distanceMm + seen));
  }

  /**
   * Returns how much glass must lie between two sheets for two eyes to see them apart.
   *
   * @param arcMinutes least visible disparity; half a minute is the usual threshold
   */
  public double leastPitchMm(double arcMinutes, Refraction glass) {
    return glass.index() * arcMinutes * ARC_MINUTE * distanceMm * distanceMm / EYES_MM;
  }

  /** Returns from how far away two eyes still see two sheets apart. */
  public static double farthestMm(double pitchMm, double arcMinutes, Refraction glass) {
    return Math.sqrt(pitchMm * EYES_MM / (glass.index() * arcMinutes * ARC_MINUTE));
  }

  /**
   * Returns how far paint must go on past the edge of an opening.
   *
   * @param gapMm between the lip of the frame and the glass
   * @param depthMm of the paint behind the face
   */
  public static double marginMm(double gapMm, double depthMm, double degrees, Refraction glass) {
    return gapMm * Math.tan(Math.toRadians(degrees)) + glass.asideMm(depthMm, degrees);
  }

  /**
   * Returns how far a subject is painted on behind the outline of one in front of it, so that no
   * gap opens.
   *
   * @param apartMm between the two planes of paint
   */
  public static double tuckUnderMm(double apartMm, double degrees, Refraction glass) {
    return glass.asideMm(apartMm, degrees);
  }
}
