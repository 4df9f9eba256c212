package org.lehrcase.demo;

import java.awt.Color;
import java.awt.GradientPaint;
import java.awt.Graphics2D;
import java.awt.Shape;

/** A brush lays three passes of a wash on a sheet, then light is lifted out of it. */
final class WashScene {
  /** When each pass begins, in seconds of the film. */
  static final double[] PASSES = {5.6, 13.2, 20.2};

  private static final Color WASH = new Color(0x2C8E9C);

  private WashScene() {}

  /** Draws the scene at {@code t} seconds of the film. */
  static void draw(Stage stage, double t) {
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
}
