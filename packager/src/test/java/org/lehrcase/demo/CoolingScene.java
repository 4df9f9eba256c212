package org.lehrcase.demo;

import java.awt.Color;

/** Two blocks cool from the top: one too fast, one slowly. */
final class CoolingScene {
  private static final double TALL = 66;

  private CoolingScene() {}

  /** Draws {@code t} seconds into the scene of 26 seconds. */
  static void draw(FramePen pen, double t) {
    double slow = Ease.rise(t, 14, 15.2);
    double fastTop = Ease.mix(0.63, 0.08, Ease.rise(t, 1, 5.5));
    double fastLow = Ease.mix(0.63, 0.52, Ease.rise(t, 1, 5.5));
    double s = 2.4;
    double y = Ease.mix(214, 120, slow);
    panel(pen, y - 30, 1);
    Pen fast = pen.at(250, y, s);
    BlockView.draw(fast, TALL, fastTop, fastLow);
    BlockView.crack(fast, TALL, Ease.rise(t, 7.6, 9.2));
    figures(pen, y, new double[] {fastTop, fastLow}, 1);
    pull(pen, y, Ease.during(t, 4, 8));
    if (slow > 0) {
      double even = Ease.rise(t, 15.5, 24);
      double top = Ease.mix(0.62, 0.1, even);
      double low = Ease.mix(0.63, 0.115, even);
      panel(pen, 336, slow);
      BlockView.draw(pen.at(250, 366, s), TALL, top, low);
      figures(pen, 366, new double[] {top, low}, slow);
    }
  }

  private static void panel(FramePen pen, double y, double shown) {
    pen.fill(Pen.soft(200, y, 880, 218, 14), Palette.alpha(Palette.WHITE, 0.55 * shown));
  }

  private static void figures(FramePen pen, double y, double[] shares, double shown) {
    Type small = Type.regular(17, Palette.SLATE).faded(shown);
    Type figure = Type.light(32, Palette.INK).faded(shown);
    pen.text("top", 740, y + 24, small);
    pen.text(Math.round(shares[0] * 800) + " °C", 740, y + 60, figure);
    pen.text("inside", 740, y + 104, small);
    pen.text(Math.round(shares[1] * 800) + " °C", 740, y + 140, figure);
    long difference = Math.round((shares[1] - shares[0]) * 800);
    Color color = difference > 60 ? Palette.CORAL : Palette.LAGOON;
    pen.text("difference", 900, y + 64, small);
    pen.text(difference + " °C", 900, y + 100, Type.bold(34, color).faded(shown));
  }

  private static void pull(FramePen pen, double y, double shown) {
    Color color = Palette.alpha(Palette.CORAL, shown);
    var left = new java.awt.geom.Point2D.Double(420, y - 12);
    var right = new java.awt.geom.Point2D.Double(516, y - 12);
    pen.arrow(left, new java.awt.geom.Point2D.Double(300, y - 12), color, 3.5);
    pen.arrow(right, new java.awt.geom.Point2D.Double(636, y - 12), color, 3.5);
    pen.text("pull", 468, y - 6, Type.bold(18, Palette.CORAL).centered().faded(shown));
  }
}
