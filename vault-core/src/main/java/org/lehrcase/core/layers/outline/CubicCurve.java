package org.lehrcase.core.layers.outline;

import java.util.ArrayList;
import java.util.List;

/**
 * A cubic Bézier curve.
 *
 * @param start where it begins
 * @param handleOut where it heads for
 * @param handleIn where it comes from
 * @param end where it ends
 */
public record CubicCurve(Point start, Point handleOut, Point handleIn, Point end) {
  /** Length of a handle that makes a quarter of a unit circle, 4/3 (√2 − 1). */
  public static final double CIRCLE_HANDLE = 4.0 / 3 * (Math.sqrt(2) - 1);

  private static final int MOST_STEPS = 500;

  /** Returns the curve through the same points as a curve with one handle. */
  public static CubicCurve ofQuadratic(Point start, Point handle, Point end) {
    return new CubicCurve(
        start, between(start, handle, 2.0 / 3), between(end, handle, 2.0 / 3), end);
  }

  private static Point between(Point from, Point to, double share) {
    return new Point(
        from.xMm() + share * (to.xMm() - from.xMm()), from.yMm() + share * (to.yMm() - from.yMm()));
  }

  /** Returns the point at a share of the way, 0 to 1. */
  public Point at(double t) {
    return new Point(
        along(t, start.xMm(), handleOut.xMm(), handleIn.xMm(), end.xMm()),
        along(t, start.yMm(), handleOut.yMm(), handleIn.yMm(), end.yMm()));
  }

  private static double along(double t, double a, double b, double c, double d) {
    double s = 1 - t;
    return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
  }

  /** Returns left, upper, right and lower extreme; for a level line two of them are equal. */
  public double[] extremesMm() {
    double[] x = extremes(start.xMm(), handleOut.xMm(), handleIn.xMm(), end.xMm());
    double[] y = extremes(start.yMm(), handleOut.yMm(), handleIn.yMm(), end.yMm());
    return new double[] {x[0], y[0], x[1], y[1]};
  }

  /** The ends, and the zeros of the derivative that lie between them. */
  private static double[] extremes(double a, double b, double c, double d) {
    double[] range = {Math.min(a, d), Math.max(a, d)};
    double p = -a + 3 * b - 3 * c + d;
    double q = 2 * (a - 2 * b + c);
    double r = b - a;
    if (Math.abs(p) < 1e-12) {
      widen(range, -r / q, a, b, c, d);
    } else {
      double root = Math.sqrt(q * q - 4 * p * r);
      widen(range, (-q + root) / (2 * p), a, b, c, d);
      widen(range, (-q - root) / (2 * p), a, b, c, d);
    }
    return range;
  }

  private static void widen(double[] range, double t, double... abcd) {
    if (t > 0 && t < 1) {
      double value = along(t, abcd[0], abcd[1], abcd[2], abcd[3]);
      range[0] = Math.min(range[0], value);
      range[1] = Math.max(range[1], value);
    }
  }

  /**
   * Returns points on the curve whose straight connections stay within a distance of it, the start
   * left out: the second derivative is at most six times the greater second difference.
   */
  public List<Point> flattened(double toleranceMm) {
    double bend = Math.max(bend(start, handleOut, handleIn), bend(handleOut, handleIn, end));
    double wanted = Math.ceil(Math.sqrt(6 * bend / (8 * toleranceMm)));
    int steps = (int) Math.max(1, Math.min(MOST_STEPS, wanted));
    List<Point> points = new ArrayList<>();
    for (int i = 1; i <= steps; i++) {
      points.add(i == steps ? end : at((double) i / steps));
    }
    return points;
  }

  private static double bend(Point a, Point b, Point c) {
    return Math.hypot(a.xMm() - 2 * b.xMm() + c.xMm(), a.yMm() - 2 * b.yMm() + c.yMm());
  }
}
