package org.lehrcase.demo;

import java.util.ArrayList;
import java.util.List;

/** Cleaning, weighing, the pinwheel of dams, the liner, and a dam that is too low. */
final class LessonB1 implements Film {
  @Override
  public String mark() {
    return "KILN 1";
  }

  @Override
  public String title() {
    return "Six sheets, one bed";
  }

  @Override
  public List<String> titleLines() {
    return List.of("Six sheets,", "one bed");
  }

  @Override
  public String promise() {
    return "Clean, weigh, dam and line";
  }

  @Override
  public int seconds() {
    return 84;
  }

  @Override
  public void draw(Stage stage, double t) {
    if (t < 17) {
      CleaningScene.draw(stage, t - 5);
    } else if (t < 34) {
      ScaleScene.draw(stage, t - 17);
    } else if (t < 50) {
      pinwheel(stage, t);
    } else if (t < 60) {
      liner(stage, t);
    } else {
      overflow(stage, t);
    }
    double[] starts = {5, 17, 34, 50, 60};
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
    stage.say(t, new double[] {5, 11}, "Clean first", "what lies between sheets stays there");
    stage.say(
        t,
        new double[] {11, 17},
        "No fingerprint, no lint, no drop",
        "look aslant against a dark cloth");
    stage.say(t, new double[] {17, 26}, "All six on the scale", "one sheet: 175.5 g");
    stage.say(
        t, new double[] {26, 34}, "1,053 g make 17.5 mm", "1,053 g ÷ 2.5 g/cm³ ÷ (18.2 × 13.2 cm)");
    stage.say(
        t,
        new double[] {34, 43},
        "Four strips close like a pinwheel",
        "2 × 210 mm and 2 × 160 mm around a bed of 182 × 132 mm");
    stage.say(
        t,
        new double[] {43, 50},
        "Each pushes against the next",
        "footprint on the shelf: 238 × 188 mm");
    stage.say(
        t,
        new double[] {50, 60},
        "Liner 3 mm lower than the block",
        "14.5 mm against 17.5 mm: the rim draws in round");
    stage.say(t, new double[] {60, 69}, "A dam of 13 mm is too low", "soft glass runs over");
    stage.say(
        t,
        new double[] {69, 79},
        "A dam of 30 mm holds it",
        "loose pile 18 mm, and at least 6 more");
  }

  private static void pinwheel(Stage stage, double t) {
    double[] closed = new double[4];
    for (int i = 0; i < 4; i++) {
      closed[i] = Ease.rise(t, 36 + i * 1.7, 37.8 + i * 1.7);
    }
    double s = 1.86;
    Pen pen = stage.pen().at(640 - 91 * s, 330 - 66 * s, s);
    DamView.pinwheel(pen, closed);
    double turn = Ease.rise(t, 43, 45);
    double size = Ease.rise(t, 34.6, 35.6);
    Type type = Type.bold(8, Palette.DEEP).centered().faded(size * (1 - turn));
    pen.text("bed 182 × 132 mm", 91, 70, type);
    if (turn > 0) {
      java.awt.geom.Arc2D arc =
          new java.awt.geom.Arc2D.Double(61, 36, 60, 60, 90, -330 * turn, java.awt.geom.Arc2D.OPEN);
      pen.line(arc, Palette.alpha(Palette.CORAL, turn), 2);
    }
  }

  private static void liner(Stage stage, double t) {
    double shown = Ease.rise(t, 50, 51);
    FramePen pen = stage.pen();
    pen.fill(Pen.soft(96, 110, 1088, 440, 14), Palette.alpha(Palette.WHITE, 0.55 * shown));
    double near = Ease.rise(t, 53, 55.5);
    double s = Ease.mix(3.4, 10.5, near);
    double x = Ease.mix(331, 420, near);
    double y = Ease.mix(380, 440, near);
    java.awt.Graphics2D g = pen.graphics();
    java.awt.Shape clip = g.getClip();
    g.clip(Pen.soft(96, 110, 1088, 440, 14));
    Pen placed = pen.at(x, y, s);
    DamView.section(placed, 30, Ease.rise(t, 50.5, 53), true);
    g.setClip(clip);
    double note = Ease.rise(t, 55.6, 56.6);
    if (note > 0.02) {
      DamView.height(placed, 40, 17.5, "block 17.5 mm", 2.2);
      DamView.height(placed, 12, 14.5, "liner 14.5 mm", 2.2);
      placed.text("dam 30 mm", -10, -13, Type.bold(2.2, Palette.INK).centered());
      placed.text("liner", 5, -26, Type.bold(2.2, Palette.INK));
      placed.arrow(
          new java.awt.geom.Point2D.Double(6, -25),
          new java.awt.geom.Point2D.Double(1.4, -14.8),
          Palette.INK,
          0.3);
    }
  }

  private static void overflow(Stage stage, double t) {
    FramePen pen = stage.pen();
    double s = 3.4;
    pen.fill(Pen.soft(96, 100, 1088, 470, 14), Palette.alpha(Palette.WHITE, 0.55));
    Pen low = pen.at(331, 280, s);
    DamView.section(low, 13, Ease.line(t, 61.5, 68.5), false);
    low.text("dam 13 mm", 91, -38, Type.bold(6, Palette.CORAL).centered());
    double second = Ease.rise(t, 68.6, 69.6);
    if (second > 0) {
      Pen high = pen.at(331, 496, s);
      DamView.section(high, 30, 0.85 * Ease.line(t, 70.5, 77), true);
      high.text("dam 30 mm", 91, -34, Type.bold(6, Palette.DEEP).centered());
    }
    double cold = t < 69.5 ? Ease.line(t, 61.5, 67) : Ease.line(t, 70.5, 76);
    long celsius = Math.round(20 + 778 * cold);
    pen.text(celsius + " °C", 1152, 146, Type.light(34, Palette.INK).right());
  }

  @Override
  public List<Tone> tones() {
    List<Tone> tones = new ArrayList<>();
    double[][] at = {
      {0.6, 2}, {1.1, 5}, {5.6, 4}, {9, 5}, {12.6, 7}, {26.2, 8}, {34.4, 3}, {36.8, 4}, {38.5, 5},
      {40.2, 6}, {41.9, 7}, {50.4, 4}, {55.8, 6}, {60.4, 3}, {65.4, 1}, {66.6, 0}, {69.4, 4},
      {77, 7}, {79.6, 5}, {80.2, 2}
    };
    for (double[] tone : at) {
      tones.add(Tone.step(tone[0], (int) tone[1]));
    }
    for (int i = 0; i < 6; i++) {
      tones.add(Tone.step(18.6 + i * 1.1, i + 1));
    }
    return tones;
  }
}
