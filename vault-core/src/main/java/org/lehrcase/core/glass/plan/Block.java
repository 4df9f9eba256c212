package org.lehrcase.core.glass.plan;

import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.heat.Slab;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;
import org.lehrcase.core.glass.say.Refused;

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
  private static final double WIDEST_MM = 10_000;

  /**
   * Checks the numbers.
   *
   * @throws Refused if one lies outside
   */
  public Block {
    if (!(thicknessMm >= THINNEST_MM && thicknessMm <= THICKEST_MM)) {
      throw new Refused(
          "thickness_mm",
          between(THINNEST_MM, THICKEST_MM)
              .between("", "; a thicker block is beyond this program"));
    }
    if (!(bareShelfMm >= 0 && bareShelfMm <= THICKEST_SHELF_MM)) {
      throw new Refused("shelf_mm", between(0, THICKEST_SHELF_MM));
    }
    if (faces == Faces.BOTH && bareShelfMm > 0) {
      throw new Refused(
          "faces",
          Phrase.of(
              "cannot be both when the block lies bare on a shelf of {}",
              Figure.length(bareShelfMm)));
    }
    if (!(widestMm >= 0 && widestMm <= WIDEST_MM)) {
      throw new Refused("widest_mm", between(0, WIDEST_MM));
    }
  }

  private static Phrase between(double leastMm, double mostMm) {
    return Phrase.of("must lie between {} and {}", Figure.length(leastMm), Figure.length(mostMm));
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
