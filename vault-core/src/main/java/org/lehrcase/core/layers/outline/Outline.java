package org.lehrcase.core.layers.outline;

import java.util.List;

/** A closed line of straight pieces round a subject, which never crosses itself. */
public final class Outline {
  /** Most corners of one outline; drawn curves are flattened to far fewer. */
  public static final int MOST_POINTS = 1000;

  /** Smaller than a brush can paint. */
  private static final double LEAST_AREA_MM2 = 0.01;

  private final List<Point> points;
  private final Box box;

  private Outline(List<Point> points) {
    this.points = points;
    this.box = boxOf(points);
  }

  /**
   * Takes the corners in order, either way round; the last is joined to the first.
   *
   * @throws IllegalArgumentException if there are too few or too many, if nothing lies inside, or
   *     if the line crosses itself
   */
  public static Outline of(List<Point> points) {
    if (points.size() < 3 || points.size() > MOST_POINTS) {
      throw new IllegalArgumentException("an outline has 3 to " + MOST_POINTS + " points");
    }
    if (Math.abs(signedAreaMm2(points)) < LEAST_AREA_MM2) {
      throw new IllegalArgumentException("nothing lies inside this outline");
    }
    if (crossesItself(points)) {
      throw new IllegalArgumentException("this outline crosses itself; draw it in one round");
    }
    return new Outline(List.copyOf(points));
  }

  /** Returns the outline of a box. */
  public static Outline ofBox(Box box) {
    return new Outline(
        List.of(
            new Point(box.x0Mm(), box.y0Mm()),
            new Point(box.x1Mm(), box.y0Mm()),
            new Point(box.x1Mm(), box.y1Mm()),
            new Point(box.x0Mm(), box.y1Mm())));
  }

  /** Returns the corners. */
  public List<Point> points() {
    return points;
  }

  /** Returns the smallest box around it. */
  public Box box() {
    return box;
  }

  /** Returns what it encloses. */
  public double areaMm2() {
    return Math.abs(signedAreaMm2(points));
  }

  private static Box boxOf(List<Point> points) {
    var x = points.stream().mapToDouble(Point::xMm).summaryStatistics();
    var y = points.stream().mapToDouble(Point::yMm).summaryStatistics();
    return new Box(x.getMin(), y.getMin(), x.getMax(), y.getMax());
  }

  private static double signedAreaMm2(List<Point> points) {
    Point first = points.get(0);
    double twice = 0;
    for (int i = 1; i + 1 < points.size(); i++) {
      twice += first.turn(points.get(i), points.get(i + 1));
    }
    return twice / 2;
  }

  private static boolean crossesItself(List<Point> points) {
    int n = points.size();
    for (int i = 0; i < n; i++) {
      for (int j = i + 2; j < n; j++) {
        boolean neighbours = i == 0 && j == n - 1;
        if (!neighbours
            && cross(points.get(i), points.get(i + 1), points.get(j), points.get((j + 1) % n))) {
          return true;
        }
      }
    }
    return false;
  }

  /** Says whether two pieces of line cross in a point that is an end of neither. */
  private static boolean cross(Point a, Point b, Point c, Point d) {
    return a.turn(b, c) * a.turn(b, d) < 0 && c.turn(d, a) * c.turn(d, b) < 0;
  }
}
