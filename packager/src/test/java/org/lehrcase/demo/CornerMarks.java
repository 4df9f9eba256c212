package org.lehrcase.demo;

import java.awt.Color;

/** Angles in the corners of a sheet, each with another number of dots. */
final class CornerMarks {
  private CornerMarks() {}

  static void draw(Pen pen, Color color) {
    corner(pen, color, new double[] {3, 3, 1, 1}, 1);
    corner(pen, color, new double[] {177, 3, -1, 1}, 2);
    corner(pen, color, new double[] {177, 127, -1, -1}, 3);
    corner(pen, color, new double[] {3, 127, 1, -1}, 0);
  }

  private static void corner(Pen pen, Color color, double[] at, int dots) {
    pen.line(Pen.way(at[0] + 7 * at[2], at[1], at[0], at[1], at[0], at[1] + 7 * at[3]), color, 0.4);
    for (int i = 0; i < dots; i++) {
      pen.fill(Pen.dot(at[0] + (2.5 + 2 * i) * at[2], at[1] + 2.5 * at[3], 0.6), color);
    }
  }
}
