package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.Point2D;

/** Two sheets cut through, very large: kelp in front, painting behind; 130 x 80 units. */
final class TuckUnder {
  private static final double SHEET = 24;
  private static final Color GLASS = new Color(0xDDF1EA);
  private static final Color FRONT = new Color(0x4E6A2C);
  private static final Color BEHIND = new Color(0xE0745F);

  private TuckUnder() {}

  /**
   * Draws the eye's ray past the kelp's right edge. {@code lean} is how far the ray runs aside in
   * one sheet over the sheet's thickness; {@code tucked} how much of 14 units is painted on behind.
   */
  static void draw(Pen pen, double lean, double tucked) {
    pen.fill(Pen.box(0, 0, 124, SHEET), GLASS);
    pen.fill(Pen.box(0, SHEET + 1, 124, SHEET), GLASS);
    pen.line(Pen.box(0, 0, 124, SHEET), Palette.GLASS_EDGE, 0.4);
    pen.line(Pen.box(0, SHEET + 1, 124, SHEET), Palette.GLASS_EDGE, 0.4);
    double edge = 62;
    double reach = edge - 16 * tucked;
    pen.fill(Pen.box(reach, -3.4, 124 - reach, 3.4), BEHIND);
    pen.fill(Pen.box(6, SHEET + 1 - 3.4, edge - 6, 3.4), FRONT);
    pen.text("behind", 122, -5.5, Type.regular(4.6, Palette.SLATE).right());
    pen.text("kelp in front", 7, SHEET - 6, Type.regular(4.6, Palette.SLATE));
    double hit = edge - lean * SHEET * 0.5;
    boolean gap = hit < reach - 0.01;
    if (gap) {
      pen.fill(Pen.box(hit, -3.4, reach - hit, 3.4), new Color(0xFFE9A0));
      pen.line(Pen.box(hit, -3.4, reach - hit, 3.4), Palette.GOLD, 0.5);
    }
    Color ray = gap ? Palette.GOLD : Palette.DEEP;
    double low = 2 * SHEET + 1;
    double out = edge + lean * SHEET * 0.5;
    pen.line(Pen.way(hit, -3.4, edge, SHEET - 2.4, out, low), ray, 0.9);
    pen.line(Pen.way(out, low, out + lean * 26, low + 26), ray, 0.9, 2.5, 2);
    eye(pen, new Point2D.Double(out + lean * 26 + 3, low + 28));
  }

  private static void eye(Pen pen, Point2D at) {
    pen.fill(Pen.dot(at.getX(), at.getY(), 4.6), Palette.WHITE);
    pen.line(Pen.dot(at.getX(), at.getY(), 4.6), Palette.DEEP, 0.6);
    pen.fill(Pen.dot(at.getX() - 1, at.getY() - 1.2, 2), Palette.NIGHT);
  }
}
