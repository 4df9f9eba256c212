package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.List;

/** The pile of sheets, closed and seen from the front, or slid apart and seen from the side. */
final class StackView {
  /** Order front to back as it should be. */
  static final List<Integer> RIGHT_ORDER = List.of(1, 2, 3, 4, 5, 6);

  private final double centerX;
  private final double centerY;
  private final double scale;

  /** Centers the pile at a point; {@code scale} is units per millimetre. */
  StackView(double centerX, double centerY, double scale) {
    this.centerX = centerX;
    this.centerY = centerY;
    this.scale = scale;
  }

  /** Returns the placement of the sheet {@code depth} places behind the front. */
  AffineTransform place(double open, double depth) {
    double m00 = Ease.mix(scale, 0.42 * scale, open);
    double m10 = Ease.mix(0, 0.13 * scale, open);
    double m11 = Ease.mix(scale, 0.80 * scale, open);
    double dx = open * (depth - 2.5) * 38 * scale;
    double dy = open * (depth - 2.5) * -5.2 * scale;
    double tx = centerX + dx - m00 * 90;
    double ty = centerY + dy - m10 * 90 - m11 * 65;
    return new AffineTransform(m00, m10, 0, m11, tx, ty);
  }

  /** Draws one pane of glass without paint. */
  void glass(Pen pen, AffineTransform place, double opacity) {
    Pen placed = pen.under(place);
    placed.fill(
        Pen.polygon(180, 0, 183.5, -1, 183.5, 129, 180, 130),
        Palette.alpha(new Color(0x7FBFAE), 0.85 * opacity));
    placed.fill(Pen.box(0, 0, 180, 130), Palette.alpha(new Color(0xDDF1E9), 0.36 * opacity));
    placed.line(Pen.box(0, 0, 180, 130), Palette.alpha(Palette.GLASS_EDGE, 0.9 * opacity), 0.6);
    placed.fill(
        Pen.polygon(14, 4, 44, 4, 20, 60, 8, 60), Palette.alpha(Palette.WHITE, 0.35 * opacity));
  }

  /** Draws the notch by which a wrong order shows: in the right order they form a staircase. */
  void notch(Pen pen, AffineTransform place, int sheet, Color color) {
    double x = 22 + 26 * (sheet - 1);
    pen.under(place).fill(Pen.polygon(x, 130, x + 9, 130, x + 4.5, 121), color);
  }

  /** Draws the pile in the given order, front to back, slid apart by {@code open} (0 to 1). */
  void draw(Pen pen, double open, List<Integer> order, double[] paint) {
    for (int depth = Reef.SHEETS - 1; depth >= 0; depth--) {
      AffineTransform place = place(open, depth);
      glass(pen, place, Math.max(0.15, open));
      pen.sheet(order.get(depth), place, paint[order.get(depth)]);
    }
  }

  /** Draws the number of the sheet {@code depth} places behind the front above its upper edge. */
  void number(Pen pen, double depth, int sheet, double shown) {
    Point2D at = place(1, depth).transform(new Point2D.Double(90, -7), null);
    pen.fill(
        Pen.dot(at.getX(), at.getY() - 4.2 * scale, 4.4 * scale),
        Palette.alpha(Palette.DEEP, shown));
    Type type = Type.bold(5.4 * scale, Palette.FOAM).centered();
    pen.text(String.valueOf(sheet), at.getX(), at.getY() - 2.3 * scale, type.faded(shown));
  }

  static double[] allPainted() {
    return new double[] {1, 1, 1, 1, 1, 1, 1};
  }
}
