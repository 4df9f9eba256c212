package org.lehrcase.demo;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;

/** The drawings of the handouts, 166 mm wide, by name. */
final class Figures {
  private Figures() {}

  static void draw(String name, Pen pen) {
    if (name.startsWith("curve-")) {
      curve(pen, name.substring(6));
      return;
    }
    switch (name) {
      case "plan" -> plan(pen);
      case "apart" -> apart(pen);
      case "ruler" -> Ruler.draw(pen, 10, 6);
      case "corners" -> corners(pen);
      case "bars" -> bars(pen);
      case "arches" -> arches(pen);
      case "depthcolors" -> DepthColors.draw(pen.at(14, 6, 0.94), 6, 1);
      case "washes" -> washes(pen);
      case "tuck" -> tuck(pen);
      case "pinwheel" -> DamView.pinwheel(pen.at(41, 31, 0.46), new double[] {1, 1, 1, 1});
      case "liner" -> liner(pen);
      case "overflow" -> overflow(pen);
      case "notches" -> notches(pen);
      case "fastslow" -> fastSlow(pen);
      case "polariser" -> polariser(pen);
      case "edges" -> edges(pen);
      default -> throw new IllegalArgumentException(name);
    }
  }

  private static void curve(Pen pen, String name) {
    FiringPlan plan =
        switch (name) {
          case "F1" -> FiringPlan.F1;
          case "F2" -> FiringPlan.F2;
          case "F3" -> FiringPlan.F3;
          case "F4" -> FiringPlan.F4;
          default -> FiringPlan.F5;
        };
    CurveView view = new CurveView(plan, new Rectangle2D.Double(16, 2, 146, 58), 3);
    view.grid(pen);
    view.curve(pen, plan.hours());
  }

  private static void plan(Pen pen) {
    for (int k = 1; k <= 6; k++) {
      double x = (k - 1) % 3 * 57;
      double y = (k - 1) / 3 * 50;
      double s = 52.0 / 180;
      pen.fill(Pen.box(x, y, 52, 130 * s), Palette.FOAM);
      pen.sheet(k, new AffineTransform(s, 0, 0, s, x, y), 1);
      pen.line(Pen.box(x, y, 52, 130 * s), Palette.GLASS_EDGE, 0.3);
      pen.text(k + "  " + Reef.name(k), x, y + 42, Type.regular(3.3, Palette.INK));
    }
  }

  private static void apart(Pen pen) {
    StackView view = new StackView(83, 36, 0.5);
    view.draw(pen, 1, StackView.RIGHT_ORDER, StackView.allPainted());
    for (int depth = 0; depth < 6; depth++) {
      view.number(pen, depth, depth + 1, 1);
    }
  }

  private static void notches(Pen pen) {
    StackView view = new StackView(83, 36, 0.5);
    for (int depth = 5; depth >= 0; depth--) {
      AffineTransform place = view.place(1, depth);
      view.glass(pen, place, 1);
      view.notch(pen, place, depth + 1, Palette.DEEP);
      view.number(pen, depth, depth + 1, 1);
    }
  }

  private static void corners(Pen pen) {
    double s = 0.6;
    Pen placed = pen.at(29, 4, s);
    placed.fill(Pen.box(0, 0, 180, 130), Palette.FOAM);
    placed.line(Pen.box(0, 0, 180, 130), Palette.GLASS_EDGE, 0.6);
    CornerMarks.draw(placed, Palette.INK);
    placed.text("R", 166, 20, Type.bold(12, Palette.LAGOON).centered());
    placed.text("top", 90, 12, Type.regular(6, Palette.SLATE).centered());
    placed.arrow(new Point2D.Double(90, 34), new Point2D.Double(90, 16), Palette.SLATE, 0.9);
    placed.text(
        "one dot, two dots, three dots, none: no two corners are alike",
        90,
        72,
        Type.regular(5.4, Palette.SLATE).centered());
  }

  private static void bars(Pen pen) {
    for (int k = 1; k <= 6; k++) {
      double x = (k - 1) * 27.8;
      double tall = 34 * Palette.strength(k);
      pen.fill(Pen.soft(x, 2, 24, 34, 1.5), Palette.MIST);
      pen.fill(
          Pen.soft(x, 36 - tall, 24, tall, 1.5),
          Palette.mix(Palette.WATER, Palette.DEEP, Palette.strength(k)));
      String share = Math.round(Palette.strength(k) * 100) + " %";
      pen.text(share, x + 12, 42, Type.bold(4, Palette.INK).centered());
      pen.text("sheet " + k, x + 12, 47, Type.regular(3.2, Palette.SLATE).centered());
    }
  }

  private static void arches(Pen pen) {
    double[] strengths = {1, 0.38};
    for (int i = 0; i < 2; i++) {
      double x = i * 86;
      pen.fill(Pen.box(x, 0, 80, 50), new java.awt.Color(0xCDEBE3));
      Pen placed = pen.at(x - 22, -20, 0.5);
      placed.fill(
          Reef.archShape(), Palette.mix(Palette.WATER, new java.awt.Color(0x16394F), strengths[i]));
      pen.fill(Pen.box(x, 41, 80, 9), new java.awt.Color(0x8FC6BD));
      pen.line(Pen.box(x, 0, 80, 50), Palette.GLASS_EDGE, 0.3);
      String text = i == 0 ? "full strength: it comes forward" : "38 %: it stands far away";
      pen.text(text, x + 40, 55, Type.regular(3.3, Palette.INK).centered());
    }
  }

  private static void washes(Pen pen) {
    for (int i = 0; i < 3; i++) {
      double x = i * 57;
      pen.fill(Pen.box(x, 0, 52, 30), Palette.FOAM);
      for (int k = 0; k <= i; k++) {
        pen.fill(Pen.box(x, 0, 52, 30), Palette.alpha(new java.awt.Color(0x2C8E9C), 0.17));
      }
      pen.line(Pen.box(x, 0, 52, 30), Palette.GLASS_EDGE, 0.3);
      String text = "pass " + (i + 1) + ": " + new String[] {"12 %", "22 %", "30 %"}[i];
      pen.text(text, x + 26, 35, Type.regular(3.3, Palette.INK).centered());
    }
  }

  private static void tuck(Pen pen) {
    TuckUnder.draw(pen.at(4, 8, 0.62), 0.9, 0);
    TuckUnder.draw(pen.at(90, 8, 0.62), 0.9, 1);
    pen.text("painted only to the outline", 40, 62, Type.regular(3.3, Palette.INK).centered());
    pen.text("painted on behind it", 126, 62, Type.regular(3.3, Palette.INK).centered());
  }

  private static void liner(Pen pen) {
    Pen placed = pen.at(34, 34, 0.54);
    DamView.section(placed, 30, 1, true);
    DamView.height(placed, -34, 30, "", 5.5);
    DamView.height(placed, 90, 17.5, "17.5 mm glass", 5.5);
    placed.text("30 mm", -56, -12, Type.bold(5.5, Palette.CORAL));
    placed.text("liner 14.5 mm", 8, -24, Type.bold(5.5, Palette.CORAL));
    placed.arrow(new Point2D.Double(12, -22), new Point2D.Double(2, -13), Palette.CORAL, 0.5);
  }

  private static void overflow(Pen pen) {
    DamView.section(pen.at(16, 18, 0.27), 13, 1, false);
    DamView.section(pen.at(101, 18, 0.27), 30, 1, true);
    pen.text("dam of 13 mm: over the top", 41, 27, Type.regular(3.3, Palette.INK).centered());
    pen.text("dam of 30 mm: held", 126, 27, Type.regular(3.3, Palette.INK).centered());
  }

  private static void fastSlow(Pen pen) {
    Pen fast = pen.at(0, 4, 0.43);
    BlockView.draw(fast, 60, 0.12, 0.8);
    BlockView.crack(fast, 60, 1);
    BlockView.draw(pen.at(86, 4, 0.43), 60, 0.4, 0.46);
    pen.text("too fast: the inside lags", 39, 35, Type.regular(3.3, Palette.INK).centered());
    pen.text("slowly: nearly even", 125, 35, Type.regular(3.3, Palette.INK).centered());
  }

  private static void polariser(Pen pen) {
    String[] labels = {"lamp", "filter", "block", "filter, crossed", "eye"};
    for (int i = 0; i < labels.length; i++) {
      double x = 12 + i * 35;
      boolean thick = i == 2;
      if (i % 2 == 1) {
        pen.fill(Pen.box(x - 1, 2, 2, 28), Palette.SLATE);
      } else if (thick) {
        pen.fill(Pen.soft(x - 5, 4, 10, 24, 1), Palette.WATER);
      } else {
        pen.fill(Pen.dot(x, 16, 6), i == 0 ? Palette.GOLD : Palette.DEEP);
      }
      pen.text(labels[i], x, 36, Type.regular(3.3, Palette.INK).centered());
      if (i < 4) {
        pen.arrow(
            new Point2D.Double(x + 9, 16), new Point2D.Double(x + 27, 16), Palette.LAGOON, 0.5);
      }
    }
  }

  private static void edges(Pen pen) {
    pen.fill(Pen.polygon(0, 0, 34, 0, 30, 8, 36, 15, 30, 24, 0, 24), Palette.WATER);
    pen.fill(Pen.polygon(40, 0, 76, 0, 76, 24, 36, 24, 42, 15, 36, 8), Palette.WATER);
    pen.text("sharp edges: on the way down", 38, 31, Type.regular(3.3, Palette.INK).centered());
    pen.fill(Pen.soft(90, 0, 35, 24, 4), Palette.WATER);
    pen.fill(Pen.soft(129, 0, 37, 24, 4), Palette.WATER);
    pen.text("rounded edges: on the way up", 128, 31, Type.regular(3.3, Palette.INK).centered());
  }
}
