package org.lehrcase.demo;

import java.awt.Color;

/** A bar of six colors on each of six sheets: red leaves first, then yellow; 176 x 74 units. */
final class DepthColors {
  private static final Color[] BAR = {
    new Color(0xD8382E),
    new Color(0xEE8A2A),
    new Color(0xF2CF3A),
    new Color(0x4FA352),
    new Color(0x2C9FB0),
    new Color(0x2C5FA8)
  };
  private static final double[] HOLDS = {0.34, 0.5, 0.66, 0.86, 0.96, 1.0};
  private static final Color DEEP_WATER = new Color(0x86B9BF);

  private DepthColors() {}

  /** Returns color {@code i} as it is mixed for a sheet. */
  static Color at(int i, int sheet) {
    double left = Math.pow(HOLDS[i], (sheet - 1) * 0.72);
    Color shifted = Palette.mix(new Color(0x5D8E96), BAR[i], left);
    return Palette.mix(DEEP_WATER, shifted, 0.25 + 0.75 * Palette.strength(sheet));
  }

  /** Draws rows for sheets 1 to {@code rows}; the last row is grown by {@code last} (0 to 1). */
  static void draw(Pen pen, int rows, double last) {
    for (int sheet = 1; sheet <= rows; sheet++) {
      double y = (sheet - 1) * 12;
      double grown = sheet == rows ? last : 1;
      pen.text("sheet " + sheet, -2, y + 7, Type.regular(3.6, Palette.SLATE).right().faded(grown));
      for (int i = 0; i < BAR.length; i++) {
        double wide = 28 * Math.max(0, Math.min(1, grown * 2 - i * 0.2));
        if (wide > 0.5) {
          pen.fill(Pen.soft(i * 29, y, wide, 10.4, 1), at(i, sheet));
        }
      }
    }
  }
}
