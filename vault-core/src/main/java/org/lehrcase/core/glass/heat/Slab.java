package org.lehrcase.core.glass.heat;

/**
 * A block as heat sees it: wide, flat, warm or cold from its faces.
 *
 * @param thicknessM thickness of the glass
 * @param faces which faces are exposed
 * @param shelfM ceramic under the glass that has to be cooled through it; 0 if the glass lies on
 *     fibre or both faces are exposed. Its diffusivity is taken as that of glass, which is crude
 */
public record Slab(double thicknessM, Faces faces, double shelfM) {
  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if the glass has no thickness or the shelf a negative one
   */
  public Slab {
    if (!(thicknessM > 0 && shelfM >= 0 && Double.isFinite(thicknessM + shelfM))) {
      throw new IllegalArgumentException("a slab has a thickness above 0");
    }
    if (faces == Faces.BOTH && shelfM > 0) {
      throw new IllegalArgumentException("a block on a bare shelf has no free bottom face");
    }
  }

  /** Makes a slab of glass alone. */
  public static Slab ofGlass(double thicknessM, Faces faces) {
    return new Slab(thicknessM, faces, 0);
  }

  /** Returns the way that heat has to go: half the thickness if both faces are exposed. */
  public double conductionLengthM() {
    return faces == Faces.BOTH ? thicknessM / 2 : thicknessM + shelfM;
  }

  /** Returns how much of that way is glass. */
  public double glassLengthM() {
    return faces == Faces.BOTH ? thicknessM / 2 : thicknessM;
  }
}
