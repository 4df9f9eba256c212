package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Area;
import java.util.ArrayList;
import java.util.List;

/** A gap opens behind the kelp and is closed; see-through against opaque; the second coat. */
final class LessonA3 implements Film {
  private static final double S = 4.6;
  private static final double X = 96;
  private static final double Y = 112;

  @Override
  public String mark() {
    return "BRUSH 3";
  }

  @Override
  public String title() {
    return "Kelp, fish and coral";
  }

  @Override
  public List<String> titleLines() {
    return List.of("Kelp, fish", "and coral");
  }

  @Override
  public String promise() {
    return "Edges, and what lies behind them";
  }

  @Override
  public int seconds() {
    return 84;
  }

  @Override
  public void draw(Stage stage, double t) {
    if (t < 42) {
      gap(stage, t);
    } else if (t < 60) {
      OverlapScene.draw(stage.pen(), t - 42);
    } else {
      CoatScene.draw(stage, t - 60);
    }
    double[] starts = {5, 16, 28, 42, 60, 72};
    int step = 0;
    for (double start : starts) {
      step += t >= start ? 1 : 0;
    }
    stage.steps(step, starts.length);
    captions(stage, t);
    stage.card(this, 1 - Ease.rise(t, 4.2, 5.2), 0.5 * Math.sin(t * 0.9));
    stage.card(this, Ease.rise(t, 79.4, 80.4), 0.5 * Math.sin(t * 0.9));
  }

  private static void captions(Stage stage, double t) {
    stage.say(
        t,
        new double[] {5, 10},
        "From the middle all is closed",
        "coral on sheet 2, kelp on sheet 1");
    stage.say(
        t,
        new double[] {10, 16},
        "The head moves: a bright gap opens",
        "bare water where coral should be");
    stage.say(
        t,
        new double[] {16, 28},
        "The coral ends where the kelp begins",
        "seen at 45°, the ray runs 1.6 mm aside in each sheet");
    stage.say(
        t,
        new double[] {28, 35},
        "Paint on behind the outline",
        "2 mm for neighbors, 5 mm for three sheets apart");
    stage.say(t, new double[] {35, 42}, "The head moves again", "the gap stays closed");
    stage.say(
        t, new double[] {42, 50}, "See-through over painted ground", "the colors add up: muddy");
    stage.say(t, new double[] {50, 60}, "Opaque covers it", "gold stays gold");
    stage.say(t, new double[] {60, 66}, "First coat", "flat and thin; fire it");
    stage.say(t, new double[] {66, 72}, "Second coat", "shadow, bands, eye; fire it again");
    stage.say(
        t,
        new double[] {72, 79},
        "Over the light table",
        "the loose pile looks darker; the block clears");
  }

  private static double lean(double t) {
    double first = Ease.rise(t, 10, 12.5);
    double hold = t < 28 ? first : first * (1 - Ease.rise(t, 28, 30));
    double again = Ease.rise(t, 35.5, 38) * (1 - Ease.rise(t, 39.6, 41.6));
    return t < 35 ? hold : again;
  }

  private static double tucked(double t) {
    return Ease.rise(t, 30, 34);
  }

  private static void gap(Stage stage, double t) {
    double lean = lean(t);
    double tucked = tucked(t);
    front(stage.pen(), lean, tucked);
    FramePen pen = stage.pen();
    double shown = Ease.rise(t, 5, 6);
    pen.fill(Pen.soft(676, Y, 512, 452, 12), Palette.alpha(Palette.WHITE, 0.6 * shown));
    pen.text("cut through, very large", 700, Y + 40, Type.regular(18, Palette.SLATE));
    TuckUnder.draw(pen.at(704, Y + 110, 3.65), 0.9 * lean, tucked);
    double measure = Ease.rise(t, 18, 19.5) * (1 - Ease.rise(t, 34, 35));
    pen.text("3 mm of glass", 724, Y + 268, Type.bold(18, Palette.LAGOON).faded(measure));
  }

  private static void front(FramePen pen, double lean, double tucked) {
    Graphics2D g = pen.graphics();
    Shape clip = g.getClip();
    Shape frame = Pen.soft(X, Y, 540, 452, 12);
    g.clip(frame);
    pen.sheet(6, new AffineTransform(S, 0, 0, S, X - 160, Y - 80), 1);
    Pen far = pen.at(X, Y, S);
    Area kelp = kelp();
    Area coral = coral();
    Area bare = new Area(coral);
    double give = 3.2 * lean;
    Area hidden = new Area(kelp);
    Area strip = new Area(kelp);
    strip.intersect(new Area(Pen.box(0, 0, 120, 120)));
    bare.subtract(hidden);
    if (tucked > 0) {
      Area under = new Area(coral);
      under.intersect(strip);
      Area swept = new Area(Pen.box(0, 0, 118, 100 * tucked));
      under.intersect(swept);
      bare.add(under);
    }
    far.fill(bare, new Color(0xDD5A46));
    Pen near = pen.at(X - give * S, Y, S);
    near.fill(kelp, new Color(0x4E6A2C));
    near.line(kelp, new Color(0x35522B), 0.5);
    g.setClip(clip);
    if (lean > 0.4 && tucked < 0.05) {
      double pulse = (lean - 0.4) / 0.6;
      pen.line(
          Pen.soft(X + 49 * S, Y + 22 * S, 22 * S, 62 * S, 40),
          Palette.alpha(Palette.GOLD, pulse),
          3.5,
          10,
          8);
      pen.text(
          "gap", X + 60 * S, Y + 20 * S - 4, Type.bold(24, Palette.FOAM).centered().faded(pulse));
    }
    pen.line(frame, Palette.FOAM, 5);
  }

  private static Area kelp() {
    Area all = new Area();
    List<Patch> leaves = new ArrayList<>();
    Flora.frond(leaves, new Flora.Frond(58, 128, 2, 0.4, 1.9), Color.GREEN);
    for (Patch leaf : leaves) {
      all.add(new Area(leaf.shape()));
    }
    all.transform(AffineTransform.getTranslateInstance(0, -28));
    all.add(new Area(Pen.box(56, 20, 5, 90)));
    return all;
  }

  private static Area coral() {
    Area all = new Area(Pen.dot(60, 62, 36));
    for (int i = 0; i < 18; i++) {
      double a = i * Math.PI / 9;
      all.add(new Area(Pen.dot(60 + 36 * Math.cos(a), 62 + 36 * Math.sin(a), 6.4)));
    }
    for (int i = 0; i < 26; i++) {
      double r = 8 + 27 * ((i * 7) % 26) / 26.0;
      double a = i * 2.4;
      all.subtract(new Area(Pen.dot(60 + r * Math.cos(a), 62 + r * Math.sin(a), 1.3)));
    }
    all.add(new Area(Pen.polygon(54, 90, 66, 90, 70, 104, 50, 104)));
    return all;
  }

  @Override
  public List<Tone> tones() {
    List<Tone> tones = new ArrayList<>();
    double[][] at = {
      {0.6, 2}, {1.1, 5}, {10.2, 4}, {12.4, 1}, {16.4, 3}, {28.2, 5}, {30.2, 6}, {31.6, 7}, {33, 8},
      {35.6, 6}, {38, 7}, {42.4, 2}, {46, 1}, {50.4, 5}, {54, 7}, {60.4, 4}, {66.4, 5}, {68, 6},
      {69.4, 7}, {72.4, 3}, {76.2, 8}, {79.6, 5}, {80.2, 2}
    };
    for (double[] tone : at) {
      tones.add(Tone.step(tone[0], (int) tone[1]));
    }
    return tones;
  }
}
