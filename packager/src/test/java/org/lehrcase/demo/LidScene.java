package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.AffineTransform;

/** A clock runs to the hour at which the lid may open, and the block shines. */
final class LidScene {
  private LidScene() {}

  /** Draws {@code t} seconds into the scene of 16 seconds. */
  static void draw(Stage stage, double t) {
    FramePen pen = stage.pen();
    double hour = Ease.mix(31.2, 46, Ease.rise(t, 0.6, 8.4));
    clock(pen, 330, 320, hour);
    double celsius =
        hour < 39.8 ? 373 - 38 * (hour - 31.2) : 22 + 24 * Math.exp(-(hour - 39.8) / 3);
    double open = Ease.rise(t, 9.2, 11.4);
    kiln(stage, open, celsius);
    pen.text(Math.round(celsius) + " °C", 850, 566, Type.light(34, Palette.INK).centered());
    pen.text("hour " + Math.round(hour), 330, 566, Type.light(34, Palette.INK).centered());
  }

  private static void clock(FramePen pen, double x, double y, double hour) {
    pen.fill(Pen.dot(x + 3, y + 6, 172), Palette.alpha(Palette.NIGHT, 0.12));
    pen.fill(Pen.dot(x, y, 172), Palette.WHITE);
    pen.line(Pen.dot(x, y, 166), Palette.SEAGLASS, 6);
    for (int i = 0; i < 12; i++) {
      double a = i * Math.PI / 6;
      double from = i % 3 == 0 ? 128 : 140;
      pen.line(
          Pen.way(
              x + from * Math.sin(a),
              y - from * Math.cos(a),
              x + 150 * Math.sin(a),
              y - 150 * Math.cos(a)),
          Palette.SLATE,
          i % 3 == 0 ? 5 : 3);
    }
    double big = (hour + 20) % 12 / 12 * 2 * Math.PI;
    double small = (hour % 1.0) * 2 * Math.PI;
    hand(pen, new double[] {x, y, big, 88}, Palette.DEEP, 9);
    hand(pen, new double[] {x, y, small, 126}, Palette.LAGOON, 5);
    pen.fill(Pen.dot(x, y, 10), Palette.CORAL);
  }

  private static void hand(FramePen pen, double[] at, Color color, double width) {
    double ex = at[0] + at[3] * Math.sin(at[2]);
    double ey = at[1] - at[3] * Math.cos(at[2]);
    pen.line(Pen.way(at[0], at[1], ex, ey), color, width);
  }

  private static void kiln(Stage stage, double open, double celsius) {
    FramePen pen = stage.pen();
    Color shell = new Color(0xB9C7C8);
    Color brick = new Color(0xEDE3CF);
    double glow = Ease.line(celsius, 60, 373);
    Pen small = pen.at(255, 157.8, 0.7);
    small.fill(Pen.soft(610, 300, 480, 226, 14), shell);
    small.fill(Pen.box(646, 300, 408, 190), brick);
    small.fill(
        Pen.box(676, 330, 348, 160),
        Palette.mix(new Color(0x3A4A4C), new Color(0xB85A32), glow * 0.6));
    AffineTransform lid = AffineTransform.getRotateInstance(1.35 * open, 1090, 300);
    Pen placed = small.under(lid);
    placed.fill(Pen.soft(610, 254, 480, 46, 12), shell);
    placed.fill(Pen.box(650, 284, 400, 16), brick);
    small.fill(Pen.box(690, 470, 320, 12), new Color(0xCBBFA9));
    double lift = 190 * Ease.rise(open, 0.35, 1);
    Pen block = small.at(723, 432 - lift, 1.4);
    block.fill(Pen.soft(0, 0, 182, 27, 2), BlockView.heat(celsius / 800));
    block.line(Pen.soft(0, 0, 182, 27, 2), Palette.DEEP, 0.8);
    if (open > 0.4) {
      double shine = Ease.rise(open, 0.4, 1);
      double s = 0.94;
      stage.picture(
          new AffineTransform(
              s * shine,
              0,
              0,
              s * shine,
              844 - 90 * s * shine,
              157.8 + 0.7 * (418 - lift) - 130 * s * shine),
          0,
          shine);
    }
  }
}
