package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.Path2D;

/** The fused block of 182 x 17.5 mm cut through, colored by its temperature, and its crack. */
final class BlockView {
  private static final int ROWS = 14;
  private static final Color[] HEAT = {
    new Color(0x8CC9C2),
    new Color(0xB9CFA6),
    new Color(0xEAC46F),
    new Color(0xEF9440),
    new Color(0xD9502F)
  };

  private BlockView() {}

  /** Returns the color of glass at a share of the hottest temperature shown. */
  static Color heat(double share) {
    double at = Math.max(0, Math.min(0.9999, share)) * (HEAT.length - 1);
    int i = (int) at;
    return Palette.mix(HEAT[i], HEAT[i + 1], at - i);
  }

  /**
   * Draws the block in a box of 182 x {@code tall} units; top and bottom shares of heat differ when
   * the inside lags. Cooled from the top only, the bottom is the core.
   */
  static void draw(Pen pen, double tall, double top, double bottom) {
    double row = tall / ROWS;
    for (int i = 0; i < ROWS; i++) {
      double depth = (i + 0.5) / ROWS;
      double share = Ease.mix(top, bottom, 1 - (1 - depth) * (1 - depth));
      double more = i == ROWS - 1 ? 0 : 0.2;
      pen.fill(Pen.box(0, i * row, 182, row + more), heat(share));
    }
    for (int i = 1; i < Reef.SHEETS; i++) {
      pen.line(
          Pen.way(0, tall * i / 6, 182, tall * i / 6), Palette.alpha(Palette.WHITE, 0.28), 0.3);
    }
    pen.line(Pen.soft(0, 0, 182, tall, 1.5), Palette.alpha(Palette.INK, 0.55), 0.6);
  }

  /** Draws a crack that has run {@code run} (0 to 1) of its way. */
  static void crack(Pen pen, double tall, double run) {
    if (run <= 0) {
      return;
    }
    double[][] way = {
      {66, 0},
      {68, 0.22},
      {64, 0.38},
      {71, 0.55},
      {84, 0.63},
      {96, 0.58},
      {109, 0.7},
      {113, 0.86},
      {120, 1}
    };
    Path2D path = new Path2D.Double();
    path.moveTo(way[0][0], 0);
    double steps = run * (way.length - 1);
    for (int i = 1; i < way.length; i++) {
      double part = Math.max(0, Math.min(1, steps - (i - 1)));
      if (part > 0) {
        path.lineTo(
            Ease.mix(way[i - 1][0], way[i][0], part),
            tall * Ease.mix(way[i - 1][1], way[i][1], part));
      }
    }
    pen.line(path, Palette.WHITE, 2.2);
    pen.line(path, Palette.NIGHT, 0.9);
  }
}
