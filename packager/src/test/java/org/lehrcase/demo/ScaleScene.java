package org.lehrcase.demo;

import java.awt.Color;
import java.util.Locale;

/** Six sheets land on a scale; the figure stops at 1,053 g; the weight becomes a thickness. */
final class ScaleScene {
  private static final double EACH = 1.1;

  private ScaleScene() {}

  /** Draws {@code t} seconds into the scene of 17 seconds. */
  static void draw(Stage stage, double t) {
    FramePen pen = stage.pen();
    double aside = Ease.rise(t, 9, 10.4);
    double x = Ease.mix(640, 380, aside);
    double shown = Ease.rise(t, 0, 0.7);
    scale(pen, x, shown);
    double grams = 0;
    for (int i = 0; i < Reef.SHEETS; i++) {
      double landed = Ease.rise(t, 0.9 + i * EACH, 1.7 + i * EACH);
      grams += 175.5 * Ease.rise(t, 1.6 + i * EACH, 2.3 + i * EACH);
      double y = Ease.mix(120, 374 - i * 15, landed);
      Color glass = Palette.mix(new Color(0xBFE3D8), Palette.LAGOON, 0.12 * i);
      pen.fill(Pen.soft(x - 180, y, 360, 13, 3), Palette.alpha(glass, landed));
      pen.line(Pen.soft(x - 180, y, 360, 13, 3), Palette.alpha(Palette.DEEP, 0.6 * landed), 1.2);
    }
    long rounded = Math.round(grams);
    String figure = String.format(Locale.ROOT, "%,d g", rounded);
    pen.text(figure, x, 480, Type.bold(46, new Color(0xBFF3DF)).centered().faded(shown));
    if (aside > 0) {
      bed(pen, t, aside);
    }
  }

  private static void scale(FramePen pen, double x, double shown) {
    pen.fill(Pen.soft(x - 200, 388, 400, 14, 6), Palette.alpha(new Color(0xB9C4C6), shown));
    pen.fill(Pen.box(x - 26, 402, 52, 20), Palette.alpha(new Color(0x93A2A5), shown));
    pen.fill(Pen.soft(x - 180, 420, 360, 110, 16), Palette.alpha(new Color(0xE9EEEC), shown));
    pen.line(Pen.soft(x - 180, 420, 360, 110, 16), Palette.alpha(new Color(0xB4C0C1), shown), 2);
    pen.fill(Pen.soft(x - 140, 434, 280, 64, 10), Palette.alpha(Palette.NIGHT, shown));
  }

  private static void bed(FramePen pen, double t, double shown) {
    double fill = Ease.rise(t, 10.4, 14);
    double s = 2.6;
    Pen placed = pen.at(664, 402, s);
    placed.fill(
        Pen.polygon(0, 0, 150, 0, 190, -38, 40, -38), Palette.alpha(new Color(0xE6DFD0), shown));
    double tall = 26 * fill;
    Color top = Palette.alpha(new Color(0x9BD4C7), 0.92 * shown);
    placed.fill(
        Pen.polygon(0, 0, 150, 0, 150, -tall, 0, -tall),
        Palette.alpha(new Color(0x63B5A6), 0.92 * shown));
    placed.fill(
        Pen.polygon(150, 0, 190, -38, 190, -38 - tall, 150, -tall),
        Palette.alpha(new Color(0x4C9C91), 0.92 * shown));
    placed.fill(Pen.polygon(0, -tall, 150, -tall, 190, -38 - tall, 40, -38 - tall), top);
    placed.text("182 mm", 75, 12, Type.regular(8, Palette.SLATE).centered().faded(shown));
    placed.text("132 mm", 176, -8, Type.regular(8, Palette.SLATE).faded(shown));
    String thick = String.format(Locale.ROOT, "%.1f mm", 17.5 * fill);
    placed.text(thick, -4, -tall / 2 + 3, Type.bold(9, Palette.CORAL).right().faded(fill));
  }
}
