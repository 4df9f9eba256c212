package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.util.ArrayList;
import java.util.List;

/** First and second coat of a fish, then the loose pile against the block. */
final class CoatScene {
  private CoatScene() {}

  /** Draws {@code t} seconds into the scene of 20 seconds. */
  static void draw(Stage stage, double t) {
    if (t < 12) {
      coats(stage.pen(), t, 1 - Ease.rise(t, 11.4, 12));
    } else {
      lightTable(stage, t - 12);
    }
  }

  private static void coats(FramePen pen, double t, double shown) {
    pen.fill(Pen.soft(240, 112, 800, 440, 14), Palette.alpha(new Color(0xF8FCFA), shown));
    pen.line(Pen.soft(240, 112, 800, 440, 14), Palette.alpha(Palette.GLASS_EDGE, shown), 2.5);
    List<Patch> fish = new ArrayList<>();
    Fauna.goldFish(fish, 0, 0, 36);
    Pen placed = pen.at(670, 332, 16);
    Graphics2D g = pen.graphics();
    Shape clip = g.getClip();
    double first = Ease.rise(t, 0.4, 4.4);
    g.clip(Pen.box(240, 112, 800 * first, 440));
    for (int i = 0; i < 4; i++) {
      placed.fill(
          fish.get(i).shape(),
          Palette.alpha(Palette.mix(fish.get(i).own(), Palette.WHITE, 0.45), shown));
    }
    g.setClip(clip);
    double[] starts = {6.3, 6.9, 7.6, 8.2, 8.6, 9.0, 9.4, 9.8, 10.2, 10.5};
    for (int i = 0; i < fish.size(); i++) {
      double at = starts[Math.min(i, starts.length - 1)];
      double in = Ease.rise(t, at, at + 0.9);
      placed.fill(fish.get(i).shape(), Palette.alpha(fish.get(i).own(), in * shown));
    }
    Area belly = new Area(fish.get(3).shape());
    belly.subtract(new Area(Pen.dot(0, -5, 12.5)));
    double shade = Ease.rise(t, 7, 8.4);
    placed.fill(belly, Palette.alpha(new Color(0xA83E06), 0.28 * shade * shown));
    pen.text("sheet 3", 272, 152, Type.regular(18, Palette.SLATE).faded(shown));
    String coat = t < 6 ? "coat 1" : "coat 2";
    pen.text(coat, 1008, 152, Type.bold(18, Palette.LAGOON).right().faded(shown));
    fire(pen, Ease.during(t, 4.6, 6.2) * shown);
    fire(pen, Ease.during(t, 10.8, 11.9) * shown);
  }

  private static void fire(FramePen pen, double glow) {
    pen.fill(Pen.soft(240, 112, 800, 440, 14), Palette.alpha(new Color(0xF6A33C), 0.34 * glow));
    pen.text("590 °C, 8 min", 640, 530, Type.bold(20, new Color(0x8A3C0C)).centered().faded(glow));
  }

  private static void lightTable(Stage stage, double t) {
    double shown = Ease.rise(t, 0, 0.8);
    double clear = Ease.rise(t, 3.6, 5.6);
    FramePen pen = stage.pen();
    AffineTransform place = new AffineTransform(3.3, 0, 0, 3.3, 343, 112);
    pen.fill(Pen.soft(300, 84, 680, 488, 20), Palette.alpha(Palette.WHITE, shown));
    stage.picture(place, 0, shown);
    Shape all = place.createTransformedShape(Pen.box(0, 0, 180, 130));
    pen.fill(all, Palette.alpha(new Color(0x33474A), 0.40 * (1 - clear) * shown));
    pen.fill(all, Palette.alpha(new Color(0xC9D6D6), 0.22 * (1 - clear) * shown));
    String name = clear < 0.5 ? "loose pile" : "fused block";
    pen.fill(Pen.soft(550, 556, 180, 40, 20), Palette.alpha(Palette.DEEP, 0.9 * shown));
    pen.text(name, 640, 583, Type.regular(19, Palette.FOAM).centered().faded(shown));
  }
}
