package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;

/** Six sheets slide apart, a subject lands on each, the head tips, two sheets are swapped. */
final class LessonA1 implements Film {
  private static final double LAND = 16;
  private static final double EACH = 3.4;
  private final StackView stack = new StackView(640, 350, 3.1);

  @Override
  public String mark() {
    return "BRUSH 1";
  }

  @Override
  public String title() {
    return "Looking into water";
  }

  @Override
  public List<String> titleLines() {
    return List.of("Looking", "into water");
  }

  @Override
  public String promise() {
    return "One picture, planned on six sheets";
  }

  @Override
  public int seconds() {
    return 76;
  }

  @Override
  public void draw(Stage stage, double t) {
    if (t < 45) {
      apart(stage, t);
    } else if (t < 56.5) {
      headTips(stage, t);
    } else {
      swapped(stage, t);
    }
    stage.steps(step(t), 5);
    captions(stage, t);
    stage.card(this, 1 - Ease.rise(t, 4.2, 5.2), 0.5 * Math.sin(t * 0.9));
    stage.card(this, Ease.rise(t, 73, 74), 0.5 * Math.sin(t * 0.9));
  }

  private static int step(double t) {
    double[] starts = {5, 10, 16, 45, 57};
    int step = 0;
    for (double start : starts) {
      step += t >= start ? 1 : 0;
    }
    return step;
  }

  private static void captions(Stage stage, double t) {
    stage.say(t, new double[] {5, 10}, "One picture", "180 × 130 mm, seen from the front");
    stage.say(t, new double[] {10, 16}, "Six sheets of glass", "each 3 mm thick");
    for (int i = 0; i < Reef.SHEETS; i++) {
      int sheet = Reef.SHEETS - i;
      double from = LAND + i * EACH;
      String kept = Math.round(100 * Palette.strength(sheet)) + " % of full contrast";
      stage.say(
          t, new double[] {from, from + EACH}, "Sheet " + sheet + ": " + Reef.name(sheet), kept);
    }
    stage.say(
        t,
        new double[] {36.6, 45},
        "Back sheet first, front sheet last",
        "deep is pale, near is strong");
    stage.say(
        t,
        new double[] {45, 56.5},
        "The head moves: near slides over far",
        "3 mm of glass lie between neighbors");
    stage.say(
        t,
        new double[] {57, 63},
        "Two sheets swapped by mistake",
        "the far arch stands in front of the fish; the notches break the line");
    stage.say(t, new double[] {63, 67.5}, "Put right", "the notches run straight through");
    stage.say(
        t,
        new double[] {67.5, 73},
        "Front to back: 1 2 3 4 5 6",
        "read the notches before every firing");
  }

  private void apart(Stage stage, double t) {
    double open = Ease.rise(t, 10, 14) * (1 - Ease.rise(t, 41.5, 45));
    double clear = Ease.rise(t, 12.5, 15);
    double[] paint = new double[7];
    for (int depth = 5; depth >= 0; depth--) {
      int sheet = depth + 1;
      double from = LAND + (5 - depth) * EACH;
      double landed = Ease.rise(t, from, from + 1.1);
      AffineTransform place = stack.place(open, depth);
      stack.glass(stage.pen(), place, Math.max(0.1, open));
      paint[sheet] = Math.max(1 - clear, t >= LAND ? landed : 0);
      AffineTransform drop = new AffineTransform(place);
      if (t >= LAND) {
        drop.preConcatenate(AffineTransform.getTranslateInstance(0, -90 * (1 - landed)));
      }
      stage.pen().sheet(sheet, drop, paint[sheet]);
      double number = Ease.rise(t, 13, 14.5) * (1 - Ease.rise(t, 41, 42));
      stack.number(stage.pen(), depth, sheet, number);
    }
    strengthBar(stage, t);
  }

  private static void strengthBar(Stage stage, double t) {
    double shown = Ease.during(t, LAND, 42);
    FramePen pen = stage.pen();
    Type small = Type.regular(16, Palette.SLATE).faded(shown);
    pen.text("contrast kept", 60, 566, small);
    for (int i = 0; i < Reef.SHEETS; i++) {
      int sheet = Reef.SHEETS - i;
      double grown = Ease.rise(t, LAND + i * EACH + 0.5, LAND + i * EACH + 1.6);
      double x = 60 + (sheet - 1) * 26;
      double tall = 92 * Palette.strength(sheet);
      pen.fill(Pen.soft(x, 448, 18, 92, 4), Palette.alpha(Palette.SEAGLASS, 0.5 * shown));
      pen.fill(
          Pen.soft(x, 540 - tall * grown, 18, tall * grown, 4),
          Palette.alpha(Palette.mix(Palette.WATER, Palette.DEEP, Palette.strength(sheet)), shown));
    }
  }

  private static double slide(double t) {
    return 2.4 * Math.sin((t - 47) * 1.35) * Ease.rise(t, 47, 48) * (1 - Ease.rise(t, 54.5, 56));
  }

  private static void headTips(Stage stage, double t) {
    double s = Ease.mix(3.1, 3.05, Ease.rise(t, 45, 46));
    double x = Ease.mix(640 - 90 * 3.1, 160, Ease.rise(t, 45, 46.6));
    double y = 350 - 65 * s;
    stage.picture(new AffineTransform(s, 0, 0, s, x, y), slide(t), 1);
    fromAbove(stage, slide(t), Ease.rise(t, 46, 47));
  }

  private static void fromAbove(Stage stage, double slide, double shown) {
    FramePen pen = stage.pen();
    double left = 880;
    Type label = Type.regular(17, Palette.SLATE).centered().faded(shown);
    pen.text("from above", left + 130, 190, label);
    for (int k = 1; k <= 6; k++) {
      double y = 390 - k * 26;
      Color tone = Palette.mix(Palette.WATER, Palette.DEEP, Palette.strength(k));
      pen.fill(Pen.soft(left, y, 260, 12, 4), Palette.alpha(tone, shown));
      pen.text(String.valueOf(k), left - 18, y + 11, Type.bold(15, Palette.SLATE).faded(shown));
    }
    double eye = left + 130 - slide * 42;
    double far = left + 130 + slide * 10;
    pen.line(Pen.way(eye, 478, far, 234), Palette.alpha(Palette.CORAL, shown), 2.5, 9, 7);
    pen.fill(Pen.dot(eye, 490, 22), Palette.alpha(Palette.WHITE, shown));
    pen.line(Pen.dot(eye, 490, 22), Palette.alpha(Palette.DEEP, shown), 2.5);
    pen.fill(Pen.dot(eye, 484, 10), Palette.alpha(Palette.LAGOON, shown));
    pen.fill(Pen.dot(eye, 482, 5), Palette.alpha(Palette.NIGHT, shown));
    pen.text("your eye", left + 130, 548, label);
  }

  private void swapped(Stage stage, double t) {
    double open = Ease.rise(t, 56.5, 58.5) * (1 - Ease.rise(t, 68.5, 71));
    double back = Ease.rise(t, 63, 65.5);
    List<double[]> parts = new ArrayList<>();
    for (int sheet = 1; sheet <= 6; sheet++) {
      double depth = sheet - 1.0;
      if (sheet == 3) {
        depth = Ease.mix(4, 2, back);
      } else if (sheet == 5) {
        depth = Ease.mix(2, 4, back);
      }
      parts.add(new double[] {depth, sheet});
    }
    parts.sort((a, b) -> Double.compare(b[0], a[0]));
    double arc = Math.sin(Math.PI * back) * open;
    for (double[] part : parts) {
      int sheet = (int) part[1];
      AffineTransform place = stack.place(open, part[0]);
      if (sheet == 3 || sheet == 5) {
        place.preConcatenate(
            AffineTransform.getTranslateInstance(0, (sheet == 3 ? -120 : 70) * arc));
      }
      boolean wrong = back < 0.9 && (sheet == 3 || sheet == 5);
      stack.glass(stage.pen(), place, Math.max(0.1, open));
      stage.pen().sheet(sheet, place, 1);
      if (open > 0.05) {
        stack.notch(stage.pen(), place, sheet, wrong ? Palette.CORAL : Palette.DEEP);
      }
      if (arc < 0.02 && open > 0.95) {
        stack.number(stage.pen(), part[0], sheet, 1);
      }
    }
  }

  @Override
  public List<Tone> tones() {
    List<Tone> tones = new ArrayList<>();
    tones.add(Tone.step(0.6, 2));
    tones.add(Tone.step(1.1, 5));
    for (int i = 0; i < 6; i++) {
      tones.add(Tone.step(10 + i * 0.5, 6 - i));
      tones.add(Tone.step(LAND + i * EACH + 0.8, i + 2));
    }
    tones.add(Tone.step(45, 5));
    tones.add(Tone.step(57.5, 1));
    tones.add(Tone.step(57.8, 0));
    tones.add(Tone.step(65.2, 5));
    tones.add(Tone.step(65.6, 7));
    tones.add(Tone.step(73.2, 5));
    tones.add(Tone.step(73.8, 2));
    return tones;
  }
}
