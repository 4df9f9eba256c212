package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** A temperature over time curve in a box. */
final class CurveView {
  private final FiringPlan plan;
  private final Rectangle2D box;
  private final double unit;

  /** Draws in {@code box}; {@code unit} is the size of the small type. */
  CurveView(FiringPlan plan, Rectangle2D box, double unit) {
    this.plan = plan;
    this.box = box;
    this.unit = unit;
  }

  private double spanHours() {
    return Math.ceil(plan.hours() / 2) * 2;
  }

  double x(double hour) {
    return box.getX() + box.getWidth() * hour / spanHours();
  }

  double y(double celsius) {
    return box.getMaxY() - box.getHeight() * celsius / 850;
  }

  /** Draws the grid with degrees Celsius at the left and hours below. */
  void grid(Pen pen) {
    pen.fill(box, Palette.alpha(Palette.WHITE, 0.7));
    Type left = Type.regular(unit, Palette.SLATE).right();
    for (int c = 0; c <= 800; c += 200) {
      pen.line(Pen.way(box.getX(), y(c), box.getMaxX(), y(c)), Palette.SEAGLASS, unit * 0.06);
      pen.text(c + " °C", box.getX() - unit * 0.5, y(c) + unit * 0.35, left);
    }
    double step = spanHours() > 12 ? 4 : 1;
    Type below = Type.regular(unit, Palette.SLATE).centered();
    for (double h = 0; h <= spanHours() + 0.01; h += step) {
      pen.line(
          Pen.way(x(h), box.getMaxY(), x(h), box.getMaxY() + unit * 0.35),
          Palette.SLATE,
          unit * 0.06);
      pen.text(Math.round(h) + " h", x(h), box.getMaxY() + unit * 1.5, below);
    }
  }

  /** Draws the curve up to an hour, with the area under it. */
  void curve(Pen pen, double untilHour) {
    List<double[]> points = plan.curve();
    Path2D path = new Path2D.Double();
    path.moveTo(x(0), y(points.get(0)[1]));
    double last = 0;
    for (double[] p : points) {
      if (p[0] <= untilHour) {
        path.lineTo(x(p[0]), y(p[1]));
        last = p[0];
      }
    }
    double end = Math.min(untilHour, plan.hours());
    if (end > last) {
      path.lineTo(x(end), y(plan.celsiusAt(end)));
    }
    Path2D under = new Path2D.Double(path);
    under.lineTo(x(end), box.getMaxY());
    under.lineTo(x(0), box.getMaxY());
    under.closePath();
    pen.fill(under, Palette.alpha(Palette.LAGOON, 0.16));
    pen.line(path, Palette.DEEP, unit * 0.2);
  }

  /** Draws the point where the firing now is. */
  void now(Pen pen, double hour, Color color) {
    double px = x(hour);
    double py = y(plan.celsiusAt(hour));
    pen.line(Pen.way(px, py, px, box.getMaxY()), Palette.alpha(color, 0.5), unit * 0.08);
    pen.fill(Pen.dot(px, py, unit * 0.75), Palette.alpha(color, 0.25));
    pen.fill(Pen.dot(px, py, unit * 0.4), color);
  }
}
