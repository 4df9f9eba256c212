package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;

/** A cloth wipes a painted sheet; smudges go. */
final class CleaningScene {
  private static final double S = 3.4;
  private static final double X = 334;
  private static final double Y = 112;
  private static final double[][] SMUDGES = {
    {34, 40, 9}, {70, 96, 8}, {104, 34, 10}, {136, 92, 9}, {158, 44, 7}
  };

  private CleaningScene() {}

  /** Draws {@code t} seconds into the scene of 12 seconds. */
  static void draw(Stage stage, double t) {
    FramePen pen = stage.pen();
    pen.fill(Pen.soft(X - 30, Y - 22, 180 * S + 60, 130 * S + 44, 14), new Color(0x21454B));
    AffineTransform place = new AffineTransform(S, 0, 0, S, X, Y);
    new StackView(X + 90 * S, Y + 65 * S, S).glass(pen, place, 1);
    pen.sheet(3, place, 1);
    double along = Ease.line(t, 1.4, 10.2);
    double[] at = cloth(along);
    Pen placed = pen.under(place);
    for (double[] smudge : SMUDGES) {
      smudge(placed, smudge, 1 - Ease.rise(along, smudge[0] / 180 - 0.03, smudge[0] / 180 + 0.09));
    }
    gleam(pen, place, t);
    if (along < 1) {
      Shape cloth = Pen.soft(at[0] - 17, at[1] - 13, 34, 26, 8);
      placed.fill(Pen.soft(at[0] - 16, at[1] - 11, 36, 27, 8), new Color(0, 0, 0, 50));
      placed.fill(cloth, new Color(0xFBF6EA));
      for (int i = 0; i < 4; i++) {
        double y = at[1] - 8 + i * 5.4;
        placed.line(Pen.way(at[0] - 12, y, at[0] + 12, y + 1.2), new Color(0xD9CFB8), 0.6);
      }
      placed.line(cloth, new Color(0xCFC3A8), 0.6);
    }
  }

  private static double[] cloth(double along) {
    double x = -8 + 200 * along;
    double y = 65 + 48 * Math.sin(along * Math.PI * 9);
    return new double[] {x, y};
  }

  private static void smudge(Pen pen, double[] at, double shown) {
    if (shown <= 0.01) {
      return;
    }
    Color grey = Palette.alpha(new Color(0xD5DEDC), 0.5 * shown);
    pen.fill(Pen.dot(at[0], at[1], at[2]), Palette.alpha(grey, 0.45));
    for (int i = 1; i < 5; i++) {
      pen.line(Pen.dot(at[0], at[1], at[2] * i / 5), grey, 0.6);
    }
  }

  private static void gleam(FramePen pen, AffineTransform place, double t) {
    double run = Ease.line(t, 10.3, 11.6);
    if (run > 0 && run < 1) {
      Graphics2D g = pen.graphics();
      Shape clip = g.getClip();
      g.clip(place.createTransformedShape(Pen.box(0, 0, 180, 130)));
      double x = -60 + 300 * run;
      pen.under(place)
          .fill(
              Pen.polygon(x, 0, x + 30, 0, x - 6, 130, x - 36, 130), new Color(255, 255, 255, 90));
      g.setClip(clip);
    }
  }
}
