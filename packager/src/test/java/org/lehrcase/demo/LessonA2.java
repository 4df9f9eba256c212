package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;

/** Three passes of a wash, colors that leave with depth, one arch strong and pale. */
final class LessonA2 implements Film {
  private static final double GRID = 5.36;
  private static final Color FULL = new Color(0x16394F);

  @Override
  public String mark() {
    return "BRUSH 2";
  }

  @Override
  public String title() {
    return "Far water";
  }

  @Override
  public String promise() {
    return "Distance in three thin washes";
  }

  @Override
  public int seconds() {
    return 78;
  }

  @Override
  public void draw(Stage stage, double t) {
    if (t < 32) {
      WashScene.draw(stage, t);
    } else if (t < 52) {
      colors(stage, t);
    } else {
      arches(stage, t);
    }
    stage.steps(t < 5 ? 0 : t < 13 ? 1 : t < 20 ? 2 : t < 27 ? 3 : t < 32 ? 4 : t < 52 ? 5 : 6, 6);
    stage.say(t, new double[] {5, 13}, "First pass", "left to right, a breath of color: 12 %");
    stage.say(t, new double[] {13, 20}, "Second pass", "right to left, streaks fade: 22 %");
    stage.say(t, new double[] {20, 27}, "Third pass", "lower half only, the depth darkens: 30 %");
    stage.say(t, new double[] {27, 32}, "Light is lifted, not painted", "a damp pad, from the top");
    stage.say(t, new double[] {32, 38}, "Six colors on sheet 1", "as they come from the jar");
    stage.say(
        t, new double[] {38, 44}, "Deeper down, red goes first", "on sheet 4 nothing is left");
    stage.say(t, new double[] {44, 52}, "Then orange and yellow", "blue-green stays longest");
    stage.say(t, new double[] {52.3, 59}, "The same arch twice", "which one is farther?");
    stage.say(t, new double[] {59, 66}, "The pale one", "same size, same place");
    stage.say(t, new double[] {66, 73}, "Strength alone sets it back", "sheet 5 keeps 38 %");
    stage.card(this, 1 - Ease.rise(t, 4.2, 5.2), 0.5 * Math.sin(t * 0.9));
    stage.card(this, Ease.rise(t, 74, 75), 0.5 * Math.sin(t * 0.9));
  }

  private static void colors(Stage stage, double t) {
    double shown = Ease.rise(t, 32, 32.6) * (1 - Ease.rise(t, 51.4, 52));
    FramePen pen = stage.pen();
    pen.fill(Pen.soft(106, 92, 1068, 476, 16), Palette.alpha(Palette.WHITE, 0.55 * shown));
    if (shown < 0.98) {
      return;
    }
    double[] starts = {32.6, 36.2, 38.6, 41, 44.4, 47};
    int rows = 0;
    for (double start : starts) {
      rows += t >= start ? 1 : 0;
    }
    if (rows > 0) {
      double last = Ease.line(t, starts[rows - 1], starts[rows - 1] + 1.6);
      DepthColors.draw(pen.at(212, 124, GRID), rows, last);
    }
    gone(pen, 0, 41.6, t, "red is gone");
    gone(pen, 2, 47.8, t, "yellow is gone");
  }

  private static void gone(FramePen pen, int column, double from, double t, String text) {
    double shown = Ease.rise(t, from, from + 0.8);
    double scale = GRID;
    double row = column == 0 ? 3 : 4;
    double x = 212 + column * 29 * scale - 4;
    double y = 124 + row * 12 * scale - 4;
    pen.line(
        Pen.soft(x, y, 28 * scale + 8, 10.4 * scale + 8, 8),
        Palette.alpha(Palette.CORAL, shown),
        3);
    pen.text(
        text,
        x + 14 * scale + 4,
        y + 5.2 * scale + 10,
        Type.bold(20, Palette.INK).centered().faded(shown));
  }

  private static void arches(Stage stage, double t) {
    FramePen pen = stage.pen();
    double shown = Ease.rise(t, 52, 53);
    double deep = Ease.rise(t, 60, 64);
    double[] strengths = {1, 0.38};
    for (int i = 0; i < 2; i++) {
      double x = 150 + i * 510;
      Shape frame = Pen.soft(x, 120, 470, 400, 10);
      Graphics2D g = pen.graphics();
      Shape clip = g.getClip();
      g.clip(frame);
      pen.sheet(6, new AffineTransform(3.1, 0, 0, 3.1, x - 60, 117), shown);
      Pen placed = pen.at(x - 145, 110, 3.1);
      Color tone = Palette.mix(Palette.WATER, FULL, strengths[i]);
      placed.fill(Reef.archShape(), Palette.alpha(tone, shown));
      Color sand = Palette.mix(Palette.WATER, new Color(0x2B5563), strengths[i]);
      placed.fill(Pen.box(0, 117, 260, 20), Palette.alpha(sand, shown));
      g.setClip(clip);
      pen.line(frame, Palette.alpha(Palette.FOAM, shown), 5);
    }
    double ask = Ease.during(t, 53.5, 60);
    pen.text("?", 640, 345, Type.light(64, Palette.DEEP).centered().faded(ask));
    label(pen, 385, "near", "full strength", deep);
    label(pen, 895, "far", "38 % of it", deep);
  }

  private static void label(FramePen pen, double x, String word, String why, double shown) {
    pen.fill(Pen.soft(x - 118, 536, 236, 50, 25), Palette.alpha(Palette.DEEP, shown));
    pen.text(word + ":  " + why, x, 568, Type.regular(21, Palette.FOAM).centered().faded(shown));
  }

  @Override
  public List<Tone> tones() {
    List<Tone> tones = new ArrayList<>();
    tones.add(Tone.step(0.6, 2));
    tones.add(Tone.step(1.1, 5));
    for (int i = 0; i < 3; i++) {
      tones.add(Tone.step(WashScene.PASSES[i], 3 + i));
      tones.add(Tone.step(27.2 + i * 1.2, 7 + i));
    }
    double[] rows = {32.6, 36.2, 38.6, 41, 44.4, 47};
    for (int i = 0; i < rows.length; i++) {
      tones.add(Tone.step(rows[i], 7 - i));
    }
    tones.add(Tone.step(53, 6));
    tones.add(Tone.step(53.6, 6));
    tones.add(Tone.step(60.4, 3));
    tones.add(Tone.step(61, 1));
    tones.add(Tone.step(74.2, 5));
    tones.add(Tone.step(74.8, 2));
    return tones;
  }
}
