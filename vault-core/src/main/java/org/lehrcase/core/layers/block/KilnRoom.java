package org.lehrcase.core.layers.block;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The room in a kiln.
 *
 * @param shelfWidthMm one side of the shelf
 * @param shelfDepthMm the other
 * @param chamberMm from the floor to the lid or its elements
 * @param postsMm posts and shelf together
 */
public record KilnRoom(double shelfWidthMm, double shelfDepthMm, double chamberMm, double postsMm) {
  /** Between dams and the edge of the shelf, and above them; common practice, no source. */
  public static final double CLEAR_MM = 25;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if there is no room at all
   */
  public KilnRoom {
    if (!(shelfWidthMm > 0 && shelfDepthMm > 0 && chamberMm > 0 && postsMm >= 0)) {
      throw new IllegalArgumentException("a kiln has a shelf and a chamber");
    }
  }

  /** Returns why a bed does not fit, in sentences; none if it fits. */
  public List<String> troubles(DamBed bed) {
    List<String> troubles = new ArrayList<>();
    double wide = bed.footprintMm(0).get(0) + 2 * CLEAR_MM;
    double deep = bed.footprintMm(0).get(1) + 2 * CLEAR_MM;
    boolean straight = wide <= shelfWidthMm && deep <= shelfDepthMm;
    boolean turned = deep <= shelfWidthMm && wide <= shelfDepthMm;
    if (!straight && !turned) {
      troubles.add(
          said(
              "The dams need %.0f × %.0f mm with room around them; the shelf is smaller.",
              wide, deep));
    }
    double high = postsMm + bed.strip().heightMm() + CLEAR_MM;
    if (high > chamberMm) {
      troubles.add(
          said("Shelf, dams and room above need %.0f mm; the chamber has %.0f.", high, chamberMm));
    }
    if (!bed.isHighEnough()) {
      troubles.add(
          said(
              "The pile needs dams of at least %.0f mm; these are %.0f mm.",
              bed.leastDamMm(), bed.strip().heightMm()));
    }
    return troubles;
  }

  private static String said(String form, double one, double two) {
    return String.format(Locale.ROOT, form, one, two);
  }

  /** Returns how many beds stand beside each other in rows, either way round. */
  public int blocks(DamBed bed) {
    double wide = bed.footprintMm(0).get(0) + CLEAR_MM;
    double deep = bed.footprintMm(0).get(1) + CLEAR_MM;
    return Math.max(rows(wide, deep), rows(deep, wide));
  }

  private int rows(double wide, double deep) {
    int across = (int) Math.floor((shelfWidthMm - CLEAR_MM) / wide);
    int down = (int) Math.floor((shelfDepthMm - CLEAR_MM) / deep);
    return Math.max(0, across) * Math.max(0, down);
  }
}
