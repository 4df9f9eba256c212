package org.lehrcase.core.glass.plan;

import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.heat.Slab;

/**
 * The glass in the kiln, by its thickness after fusing.
 *
 * @param thicknessMm final thickness; of a single sheet when enamel is fired on
 * @param faces faces that lose heat
 * @param fused one piece from the start
 * @param bareShelfMm shelf that the glass touches without fibre between; 0 otherwise
 * @param widestMm longest side, for the time that air needs to leave; 0 if not known
 */
public record Block(
    double thicknessMm, Faces faces, boolean fused, double bareShelfMm, double widestMm) {
  /** Thinner glass is no block. */
  public static final double THINNEST_MM = 1;

  /** Beyond this nobody has checked the rules against practice. */
  public static final double THICKEST_MM = 300;

  private static final double THICKEST_SHELF_MM = 100;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if one lies outside; the message begins with its JSON name
   */
  public Block {
    if (!(thicknessMm >= THINNEST_MM && thicknessMm <= THICKEST_MM)) {
      throw new IllegalArgumentException(
          "thickness_mm must lie between 1 and 300 mm; a thicker block is beyond this program");
    }
    if (!(bareShelfMm >= 0 && bareShelfMm <= THICKEST_SHELF_MM)) {
      throw new IllegalArgumentException("shelf_mm must lie between 0 and 100 mm");
    }
    if (faces == Faces.BOTH && bareShelfMm > 0) {
      throw new IllegalArgumentException(
          "faces cannot be both when the block lies bare on a shelf of " + bareShelfMm + " mm");
    }
    if (!(widestMm >= 0 && widestMm <= 10_000)) {
      throw new IllegalArgumentException("widest_mm must lie between 0 and 10000 mm");
    }
  }

  /** Makes a block on fibre or posts, of any width. */
  public static Block of(double thicknessMm, Faces faces, boolean fused) {
    return new Block(thicknessMm, faces, fused, 0, 0);
  }

  /** Returns the block as heat sees it. */
  public Slab slab() {
    return new Slab(thicknessMm / 1000, faces, bareShelfMm / 1000);
  }

  /** Returns the thickness that a table for two faces must be asked for: twice for one face. */
  public double tableThicknessMm() {
    return slab().conductionLengthM() * 2000;
  }
}
