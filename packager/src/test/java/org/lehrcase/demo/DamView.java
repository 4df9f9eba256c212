package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;

/** Dams, liner and bed, in millimetres: from above, and cut through. */
final class DamView {
  static final Color CERAMIC = new Color(0xD8CDBB);
  static final Color CERAMIC_EDGE = new Color(0x9C8F7B);
  static final Color LINER = new Color(0xFFF0C2);
  static final Color LINER_EDGE = new Color(0xB59A55);
  static final Color MOLTEN = new Color(0xF2B36B);
  private static final Type SIZE = Type.regular(7, Palette.INK).centered();

  private DamView() {}

  /**
   * Draws the bed of 182 x 132 mm from above with its left upper corner at (0, 0) and the four
   * strips; {@code closed} says how far each has slid home.
   */
  static void pinwheel(Pen pen, double[] closed) {
    pen.fill(Pen.soft(-64, -62, 310, 256, 6), new Color(0xE9E2D4));
    pen.line(Pen.soft(-64, -62, 310, 256, 6), CERAMIC_EDGE, 0.7);
    pen.fill(Pen.box(0, 0, 182, 132), new Color(0xCFE8DF));
    pen.sheet(1, new java.awt.geom.AffineTransform(1, 0, 0, 1, 1, 1), 0.18);
    pen.line(Pen.box(0, 0, 182, 132), Palette.LAGOON, 0.6, 3, 2);
    double away = 34;
    strip(pen, new double[] {0 - away * (1 - closed[0]), -20, 210, 20}, "210");
    strip(pen, new double[] {182, 0 - away * (1 - closed[1]), 20, 160}, "160");
    strip(pen, new double[] {-28 + away * (1 - closed[2]), 132, 210, 20}, "210");
    strip(pen, new double[] {-20, -28 + away * (1 - closed[3]), 20, 160}, "160");
  }

  private static void strip(Pen pen, double[] box, String label) {
    pen.fill(Pen.box(box[0] + 1.5, box[1] + 2, box[2], box[3]), new Color(0, 0, 0, 34));
    pen.fill(Pen.box(box[0], box[1], box[2], box[3]), CERAMIC);
    pen.line(Pen.box(box[0], box[1], box[2], box[3]), CERAMIC_EDGE, 0.6);
    pen.text(label, box[0] + box[2] / 2, box[1] + box[3] / 2 + 2.4, SIZE);
  }

  /**
   * Draws a cut through the bed: shelf at y = 0, the left dam's inner face at x = 0. The pile of
   * six sheets softens from loose ({@code melt} 0) to fused (1).
   */
  static void section(Pen pen, double dam, double melt, boolean liner) {
    double width = 182;
    pen.fill(Pen.box(-60, 0, width + 120, 12), new Color(0xCBBFA9));
    pen.line(Pen.way(-60, 0, width + 60, 0), CERAMIC_EDGE, 0.6);
    pen.fill(Pen.box(-60, -0.9, width + 120, 0.9), LINER);
    if (dam > 18 || melt < 0.55) {
      block(pen, melt, width);
    } else {
      spill(pen, dam, (melt - 0.55) / 0.45, width);
    }
    damBlock(pen, -20, dam);
    damBlock(pen, width, dam);
    if (liner) {
      pen.fill(Pen.box(0, -14.5, 2.2, 14.5), LINER);
      pen.line(Pen.box(0, -14.5, 2.2, 14.5), LINER_EDGE, 0.35);
      pen.fill(Pen.box(width - 2.2, -14.5, 2.2, 14.5), LINER);
      pen.line(Pen.box(width - 2.2, -14.5, 2.2, 14.5), LINER_EDGE, 0.35);
    }
  }

  private static void damBlock(Pen pen, double x, double height) {
    pen.fill(Pen.box(x, -height, 20, height), CERAMIC);
    pen.line(Pen.box(x, -height, 20, height), CERAMIC_EDGE, 0.6);
  }

  private static void block(Pen pen, double melt, double width) {
    Color glass =
        Palette.mix(
            new Color(0x8CCFC0), MOLTEN, Ease.rise(melt, 0, 0.5) * (1 - Ease.rise(melt, 0.86, 1)));
    double top = Ease.mix(18.6, 17.5, melt);
    double inset = Ease.mix(3.2, 2.2, melt);
    double round = 0.2 + 2.6 * melt;
    pen.fill(Pen.soft(inset, -top, width - 2 * inset, top, round), glass);
    double lines = 1 - Ease.rise(melt, 0.1, 0.9);
    for (int i = 1; i < 6; i++) {
      double y = -top * i / 6;
      Color seam = Palette.alpha(Palette.DEEP, 0.15 + 0.6 * lines);
      pen.line(Pen.way(inset + 1, y, width - inset - 1, y), seam, 0.35);
    }
    pen.line(Pen.soft(inset, -top, width - 2 * inset, top, round), Palette.LAGOON, 0.5);
  }

  private static void spill(Pen pen, double dam, double run, double width) {
    Path2D path = new Path2D.Double();
    double out = 20 + 26 * Ease.rise(run, 0.2, 1);
    double over = 3.2 * Math.sin(Math.PI * Math.min(1, run * 0.8)) + 1.2;
    double foot = Ease.mix(-dam, 0, Ease.rise(run, 0.3, 0.8));
    double top = Ease.mix(17.6, dam + 1.6, run);
    path.moveTo(-out, foot);
    path.curveTo(-out - 2, foot - over, -20, -dam - over, -12, -dam - over);
    path.curveTo(10, -dam - over, 30, -top, width / 2, -top);
    path.curveTo(width - 30, -top, width - 10, -dam - over, width + 12, -dam - over);
    path.curveTo(width + 20, -dam - over, width + out + 2, foot - over, width + out, foot);
    path.lineTo(width + 20, foot);
    path.lineTo(width + 20, -dam);
    path.lineTo(width, -dam);
    path.lineTo(width, 0);
    path.lineTo(0, 0);
    path.lineTo(0, -dam);
    path.lineTo(-20, -dam);
    path.lineTo(-20, foot);
    path.closePath();
    pen.fill(path, MOLTEN);
    pen.line(path, new Color(0xC77B33), 0.5);
  }

  /** Draws a measure from the shelf up at x, with its text of a size beside it. */
  static void height(Pen pen, double x, double tall, String text, double size) {
    Color color = Palette.CORAL;
    pen.line(Pen.way(x - size * 0.5, 0, x + size * 0.5, 0), color, size * 0.09);
    pen.line(Pen.way(x - size * 0.5, -tall, x + size * 0.5, -tall), color, size * 0.09);
    pen.arrow(new Point2D.Double(x, -tall / 2), new Point2D.Double(x, -tall), color, size * 0.09);
    pen.arrow(new Point2D.Double(x, -tall / 2), new Point2D.Double(x, 0), color, size * 0.09);
    pen.text(text, x + size * 0.6, -tall / 2 + size * 0.35, Type.bold(size, color));
  }
}
