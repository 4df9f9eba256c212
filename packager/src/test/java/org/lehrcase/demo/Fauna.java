package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Path2D;
import java.util.List;

/** Invented reef fish as shapes in millimetres; all swim to the right. */
final class Fauna {
  private Fauna() {}

  /** A banded fish with its middle at (x, y). */
  static void goldFish(List<Patch> on, double x, double y, double length) {
    double s = length / 36;
    Color gold = new Color(0xF28A0F);
    Color fin = new Color(0xC9480C);
    on.add(new Patch(shape(FIN_TOP, x, y, s), fin, true));
    on.add(new Patch(shape(FIN_LOW, x, y, s), fin, true));
    on.add(new Patch(shape(TAIL, x, y, s), fin, true));
    Shape body = shape(BODY, x, y, s);
    on.add(new Patch(body, gold, true));
    Area belly = new Area(body);
    belly.intersect(new Area(Pen.box(x - 20 * s, y + 2.6 * s, 40 * s, 10 * s)));
    on.add(new Patch(belly, new Color(0xFFBE4D), false));
    for (double at : new double[] {-6.5, 3.5}) {
      Path2D band = new Path2D.Double();
      band.moveTo(x + at * s, y - 10 * s);
      band.curveTo(
          x + (at + 3) * s, y - 4 * s, x + (at + 3) * s, y + 4 * s, x + at * s, y + 10 * s);
      Area cut = new Area(Flora.stroke(band, 2.7 * s));
      cut.intersect(new Area(body));
      on.add(new Patch(cut, new Color(0xFFF6E4), true));
    }
    on.add(new Patch(shape(SIDE_FIN, x, y, s), new Color(0xE06A10), true));
    on.add(new Patch(Pen.dot(x + 11.6 * s, y - 1.8 * s, 1.7 * s), Color.WHITE, true));
    on.add(new Patch(Pen.dot(x + 11.9 * s, y - 1.8 * s, 1.0 * s), new Color(0x12262B), false));
  }

  /** A plain small fish of the shoal. */
  static Shape smallFish(double x, double y, double length) {
    double s = length / 36;
    Path2D all = new Path2D.Double(shape(BODY, x, y, s));
    all.append(shape(TAIL, x, y, s), false);
    return all;
  }

  private static final double[][] BODY = {
    {17, 0}, {13, -7, 3, -10, -5, -7}, {-9, -5.4, -11, -3, -12.5, -1.4},
    {-13, 0, -13, 0, -12.5, 1.4}, {-11, 3, -9, 5.6, -5, 7.4}, {3, 10.4, 13, 7.4, 17, 0}
  };
  private static final double[][] TAIL = {
    {-11.5, 0}, {-14, -3, -17, -7, -21, -8}, {-19, -3, -19, 3, -21, 8}, {-17, 7, -14, 3, -11.5, 0}
  };
  private static final double[][] FIN_TOP = {
    {7, -6}, {4, -13, -4, -13.5, -10, -11}, {-9, -8, -8, -6, -8, -4.4}, {-3, -5, 2, -6, 7, -6}
  };
  private static final double[][] FIN_LOW = {
    {2, 7}, {-1, 12, -5, 12.4, -9, 11.4}, {-8, 9, -7, 7, -6.6, 5.4}, {-4, 6.4, -1, 7, 2, 7}
  };
  private static final double[][] SIDE_FIN = {
    {6, 1}, {3, 0, -1, 1, -3.4, 4.4}, {0, 5.6, 4, 5, 6, 1}
  };

  private static Shape shape(double[][] steps, double x, double y, double s) {
    Path2D path = new Path2D.Double();
    path.moveTo(x + steps[0][0] * s, y + steps[0][1] * s);
    for (int i = 1; i < steps.length; i++) {
      double[] c = steps[i];
      path.curveTo(
          x + c[0] * s, y + c[1] * s, x + c[2] * s, y + c[3] * s, x + c[4] * s, y + c[5] * s);
    }
    path.closePath();
    return path;
  }
}
