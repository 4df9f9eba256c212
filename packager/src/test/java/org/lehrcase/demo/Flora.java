package org.lehrcase.demo;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.util.List;

/** Plants, corals and stones as shapes in millimetres. */
final class Flora {
  private Flora() {}

  /** A kelp frond that grows from the lower edge at {@code x}. */
  record Frond(double x, double height, double lean, double phase, double size) {
    double stemX(double up) {
      return x + lean * up + 5 * size * Math.sin(phase + up * 5.2) * (0.3 + up);
    }

    double stemY(double up) {
      return 131 - height * up;
    }
  }

  static void frond(List<Patch> on, Frond frond, Color color) {
    int leaves = (int) Math.round(frond.height() / (6.4 * frond.size()));
    Color light = Palette.mix(color, new Color(0xB9C25A), 0.42);
    for (int i = 2; i <= leaves; i++) {
      double up = (double) i / leaves;
      double side = i % 2 == 0 ? 1 : -1;
      double length = frond.size() * (21 - 9 * up);
      double angle = -Math.PI / 2 + side * (0.95 - 0.45 * up) + 0.16 * Math.sin(i * 1.7);
      Shape leaf = leaf(frond.stemX(up), frond.stemY(up), length, angle);
      on.add(new Patch(leaf, i % 3 == 0 ? light : Palette.mix(color, light, 0.45), true));
    }
    Path2D stem = new Path2D.Double();
    stem.moveTo(frond.stemX(0), frond.stemY(0));
    for (int i = 1; i <= 40; i++) {
      stem.lineTo(frond.stemX(i / 40.0), frond.stemY(i / 40.0));
    }
    on.add(new Patch(stroke(stem, 1.7 * frond.size()), color, true));
  }

  private static Shape leaf(double x, double y, double length, double angle) {
    double c = Math.cos(angle);
    double s = Math.sin(angle);
    double w = length * 0.24;
    Path2D path = new Path2D.Double();
    path.moveTo(x, y);
    path.curveTo(
        x + c * length * 0.3 - s * w,
        y + s * length * 0.3 + c * w,
        x + c * length * 0.7 - s * w,
        y + s * length * 0.7 + c * w,
        x + c * length,
        y + s * length - length * 0.12);
    path.curveTo(
        x + c * length * 0.7 + s * w * 0.8,
        y + s * length * 0.7 - c * w * 0.8,
        x + c * length * 0.3 + s * w * 0.8,
        y + s * length * 0.3 - c * w * 0.8,
        x,
        y);
    path.closePath();
    return path;
  }

  /** A fan coral with its foot at (x, y). */
  static Shape fan(double x, double y, double size) {
    Area all = new Area();
    branch(all, new double[] {x, y, -Math.PI / 2, size * 0.27, size * 0.062}, 6);
    return all;
  }

  private static void branch(Area all, double[] b, int left) {
    double ex = b[0] + Math.cos(b[2]) * b[3];
    double ey = b[1] + Math.sin(b[2]) * b[3];
    all.add(new Area(stroke(Pen.way(b[0], b[1], ex, ey), b[4])));
    if (left == 0) {
      return;
    }
    double next = b[3] * 0.84;
    double spread = 0.36 + 0.05 * Math.sin(left * 2.1 + b[2] * 5);
    branch(all, new double[] {ex, ey, b[2] - spread, next, b[4] * 0.78}, left - 1);
    branch(all, new double[] {ex, ey, b[2] + spread, next, b[4] * 0.78}, left - 1);
  }

  /** Three tube sponges that stand on (x, y). */
  static void tubes(List<Patch> on, double x, double y, Color color) {
    double[][] tubes = {{-7, 20, 5.4}, {0, 29, 6.4}, {7.4, 16, 5}};
    for (double[] tube : tubes) {
      double w = tube[2];
      double left = x + tube[0] - w / 2;
      double top = y - tube[1];
      Path2D path = new Path2D.Double();
      path.moveTo(left + w * 0.18, y);
      path.curveTo(left + w * 0.1, y - tube[1] * 0.5, left - w * 0.1, top + 5, left, top);
      path.lineTo(left + w, top);
      path.curveTo(left + w * 1.1, top + 5, left + w * 0.9, y - tube[1] * 0.5, left + w * 0.82, y);
      path.closePath();
      on.add(new Patch(path, color, true));
      Ellipse2D rim = new Ellipse2D.Double(left, top - w * 0.24, w, w * 0.48);
      on.add(new Patch(rim, Palette.mix(color, Color.WHITE, 0.4), true));
      double in = w * 0.2;
      Ellipse2D hole = new Ellipse2D.Double(left + in, top - w * 0.12, w - 2 * in, w * 0.24);
      on.add(new Patch(hole, Palette.mix(color, Color.BLACK, 0.45), false));
    }
  }

  /** A ball of brain coral on the ground. */
  static void dome(List<Patch> on, double x, double y, double radius, Color color) {
    Area dome = new Area(Pen.dot(x, y, radius));
    dome.subtract(new Area(Pen.box(x - 30, y + radius * 0.35, 60, 30)));
    on.add(new Patch(dome, color, true));
    Area lines = new Area();
    for (int i = 1; i < 5; i++) {
      double r = radius * (1 - i * 0.2);
      Path2D path = new Path2D.Double();
      for (int k = 0; k <= 36; k++) {
        double a = Math.PI + Math.PI * k / 36;
        double wave = r + 0.7 * Math.sin(k * 1.4 + i * 2);
        double px = x + wave * Math.cos(a);
        double py = y + wave * Math.sin(a);
        if (k == 0) {
          path.moveTo(px, py);
        } else {
          path.lineTo(px, py);
        }
      }
      lines.add(new Area(stroke(path, 0.9)));
    }
    lines.intersect(dome);
    on.add(new Patch(lines, Palette.mix(color, new Color(0x7B2D1F), 0.55), false));
  }

  /** A low hill along the lower edge between two x. */
  static Shape mound(double from, double to, double height) {
    double w = to - from;
    Path2D path = new Path2D.Double();
    path.moveTo(from, 132);
    path.curveTo(
        from + w * 0.12,
        131 - height,
        from + w * 0.3,
        131 - height * 1.15,
        from + w * 0.46,
        130 - height * 0.92);
    path.curveTo(from + w * 0.64, 130 - height * 0.7, from + w * 0.8, 131 - height * 1.1, to, 132);
    path.closePath();
    return path;
  }

  static Shape stroke(Shape shape, double width) {
    return new BasicStroke((float) width, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
        .createStrokedShape(shape);
  }
}
