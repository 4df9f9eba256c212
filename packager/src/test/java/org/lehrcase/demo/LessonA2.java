package org.lehrcase.demo;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;

/** Three passes of a wash, colors that leave with depth, one arch strong and pale. */
final class LessonA2 implements Film {
  private static final double GRID = 5.36;
  private static final double[] PASSES = {5.6, 13.2, 20.2};
  private static final Color WASH = new Color(0x2C8E9C);
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
      washes(stage, t);
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

  private static void washes(Stage stage, double t) {
    FramePen pen = stage.pen();
    double leave = 1 - Ease.rise(t, 31.4, 32);
    Shape sheet = Pen.box(290, 110, 620, 448);
    pen.fill(Pen.soft(294, 118, 620, 448, 4), Palette.alpha(Palette.NIGHT, 0.12 * leave));
    pen.fill(sheet, Palette.alpha(new Color(0xF7FCFA), leave));
    Graphics2D g = pen.graphics();
    Shape clip = g.getClip();
    g.clip(sheet);
    for (int i = 0; i < 3; i++) {
      pass(pen, i, Ease.line(t, PASSES[i], PASSES[i] + 4.6), t, leave);
    }
    rays(pen, t, leave);
    g.setClip(clip);
    pen.line(sheet, Palette.alpha(Palette.GLASS_EDGE, leave), 2);
    for (int i = 0; i < 3; i++) {
      double along = Ease.line(t, PASSES[i], PASSES[i] + 4.6);
      if (along > 0 && along < 1) {
        brush(pen, front(i, along), lane(i, along));
      }
    }
    meter(pen, t, leave);
  }

  private static int lanes(int pass) {
    return pass == 2 ? 2 : 3;
  }

  private static double lane(int pass, double along) {
    int lane = Math.min(lanes(pass) - 1, (int) (along * lanes(pass)));
    return pass == 2 ? 334 + 112 * lane : 110 + 149.3 * lane;
  }

  private static double front(int pass, double along) {
    double part = along * lanes(pass) % 1.0;
    double eased = part * part * (3 - 2 * part);
    return pass == 1 ? 910 - 640 * eased : 290 + 640 * eased;
  }

  private static void pass(FramePen pen, int pass, double along, double t, double leave) {
    double dry = Ease.rise(t, PASSES[pass] + 4.6, PASSES[pass] + 6.4);
    Color tone = Palette.alpha(WASH, (0.22 - 0.03 * dry) * leave);
    int lanes = lanes(pass);
    for (int lane = 0; lane < lanes; lane++) {
      double part = Math.max(0, Math.min(1, along * lanes - lane));
      if (part > 0) {
        double eased = part * part * (3 - 2 * part);
        double y = pass == 2 ? 334 + 112 * lane : 110 + 149.3 * lane;
        double tall = pass == 2 ? 112 : 149.4;
        double x = pass == 1 ? 910 - 640 * eased : 270;
        double wide = pass == 1 ? 660 * eased : 20 + 640 * eased;
        pen.fill(Pen.box(x, y, wide, tall), tone);
        streaks(pen, new double[] {x, y, wide, tall}, pass, (1 - 0.75 * dry) * leave);
      }
    }
  }

  private static void streaks(FramePen pen, double[] box, int pass, double strength) {
    for (int i = 0; i < 9; i++) {
      double y = box[1] + (i + 0.5) * box[3] / 9 + 4 * Math.sin(i * 2.7 + pass);
      Color tone = Palette.alpha(i % 2 == 0 ? Palette.WHITE : WASH, 0.16 * strength);
      pen.fill(Pen.box(box[0], y, box[2], 3 + i % 3), tone);
    }
  }

  private static void rays(FramePen pen, double t, double leave) {
    double[][] rays = {{360, 40, 300, 90}, {470, 50, 440, 130}, {600, 34, 640, 80}};
    for (int i = 0; i < rays.length; i++) {
      double down = Ease.rise(t, 27.2 + i * 1.2, 28.6 + i * 1.2);
      if (down > 0) {
        double[] r = rays[i];
        double low = 110 + 448 * down;
        double x = Ease.mix(r[0], r[2], down);
        double w = Ease.mix(r[1], r[3], down);
        Shape ray = Pen.polygon(r[0], 110, r[0] + r[1], 110, x + w, low, x, low);
        Graphics2D g = pen.graphics();
        g.setPaint(
            new GradientPaint(
                0,
                110,
                new Color(255, 255, 255, (int) (170 * leave)),
                0,
                558,
                new Color(255, 255, 255, 20)));
        g.fill(ray);
        if (down < 1) {
          pen.fill(Pen.soft(x + w / 2 - 26, low - 18, 52, 36, 14), new Color(0xF3D9B8));
          pen.line(Pen.soft(x + w / 2 - 26, low - 18, 52, 36, 14), new Color(0xC9A77A), 2);
        }
      }
    }
  }

  private static void brush(FramePen pen, double x, double y) {
    double middle = y + 74;
    pen.fill(Pen.soft(x - 12, y + 6, 26, 136, 6), new Color(0xD9C29A));
    pen.fill(Pen.soft(x - 14, y + 2, 12, 144, 6), Palette.mix(WASH, Palette.WHITE, 0.2));
    pen.fill(Pen.soft(x + 12, y + 14, 22, 120, 4), new Color(0xB9BFC2));
    pen.fill(
        Pen.polygon(
            x + 34,
            y + 40,
            x + 60,
            middle - 14,
            x + 190,
            middle - 11,
            x + 190,
            middle + 11,
            x + 60,
            middle + 14,
            x + 34,
            y + 108),
        new Color(0x9A5F3C));
  }

  private static void meter(FramePen pen, double t, double leave) {
    double[] shares = {0.12, 0.22, 0.30};
    double now = 0;
    for (int i = 0; i < 3; i++) {
      now = Ease.mix(now, shares[i], Ease.rise(t, PASSES[i], PASSES[i] + 4.6));
    }
    double shown = Ease.rise(t, 5, 6) * leave;
    pen.text("tone", 1010, 196, Type.regular(17, Palette.SLATE).centered().faded(shown));
    pen.fill(Pen.soft(990, 212, 40, 300, 8), Palette.alpha(Palette.WHITE, shown));
    double tall = 300 * now / 0.40;
    pen.fill(Pen.soft(990, 512 - tall, 40, tall, 8), Palette.alpha(Palette.LAGOON, shown));
    for (double share : shares) {
      double y = 512 - 300 * share / 0.40;
      pen.line(Pen.way(1034, y, 1046, y), Palette.alpha(Palette.SLATE, shown), 2);
      pen.text(
          Math.round(share * 100) + " %",
          1054,
          y + 6,
          Type.regular(17, Palette.SLATE).faded(shown));
    }
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
      tones.add(Tone.step(PASSES[i], 3 + i));
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
