package org.lehrcase.core.layers.outline;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/**
 * The area that two outlines share, exactly: between two neighbouring heights of corners and
 * crossings every edge is straight and none crosses another, so what is shared is a row of
 * trapezoids whose middle says all.
 */
public final class Overlap {
  /** Less than this is a touching edge and the rounding of its numbers. */
  public static final double LEAST_MM2 = 1e-6;

  private Overlap() {}

  /** Says whether they share more than an edge. */
  public static boolean exists(Outline one, Outline two) {
    return one.box().overlaps(two.box(), 0) && areaMm2(one, two) > LEAST_MM2;
  }

  /** Returns the shared area. */
  public static double areaMm2(Outline one, Outline two) {
    if (!one.box().overlaps(two.box(), 0)) {
      return 0;
    }
    double area = 0;
    double from = Double.NaN;
    for (double to : heights(one, two)) {
      if (to > from) {
        double middle = (from + to) / 2;
        area += (to - from) * shared(inside(one, middle), inside(two, middle));
      }
      from = to;
    }
    return area;
  }

  private static TreeSet<Double> heights(Outline one, Outline two) {
    var heights = new TreeSet<Double>();
    one.points().forEach(p -> heights.add(p.yMm()));
    two.points().forEach(p -> heights.add(p.yMm()));
    List<Point> a = one.points();
    List<Point> b = two.points();
    for (int i = 0; i < a.size(); i++) {
      for (int j = 0; j < b.size(); j++) {
        addCrossing(heights, edge(a, i), edge(b, j));
      }
    }
    double low = Math.max(one.box().y0Mm(), two.box().y0Mm());
    double high = Math.min(one.box().y1Mm(), two.box().y1Mm());
    return new TreeSet<>(heights.subSet(low, true, high, true));
  }

  private record Edge(Point from, Point to) {}

  private static Edge edge(List<Point> points, int at) {
    return new Edge(points.get(at), points.get((at + 1) % points.size()));
  }

  private static void addCrossing(TreeSet<Double> heights, Edge one, Edge two) {
    double before = one.from().turn(one.to(), two.from());
    double after = one.from().turn(one.to(), two.to());
    boolean parted =
        two.from().turn(two.to(), one.from()) * two.from().turn(two.to(), one.to()) > 0;
    if (before * after < 0 && !parted) {
      double share = before / (before - after);
      heights.add(two.from().yMm() + share * (two.to().yMm() - two.from().yMm()));
    }
  }

  /** Returns where a level line enters and leaves, in turn. */
  private static double[] inside(Outline outline, double y) {
    List<Point> points = outline.points();
    double[] at = new double[points.size()];
    int found = 0;
    for (int i = 0; i < points.size(); i++) {
      Edge edge = edge(points, i);
      double y0 = edge.from().yMm();
      double y1 = edge.to().yMm();
      if (y0 < y != y1 < y) {
        double share = (y - y0) / (y1 - y0);
        at[found++] = edge.from().xMm() + share * (edge.to().xMm() - edge.from().xMm());
      }
    }
    double[] sorted = Arrays.copyOf(at, found);
    Arrays.sort(sorted);
    return sorted;
  }

  private static double shared(double[] one, double[] two) {
    double length = 0;
    for (int i = 0; i + 1 < one.length; i += 2) {
      for (int j = 0; j + 1 < two.length; j += 2) {
        double from = Math.max(one[i], two[j]);
        double to = Math.min(one[i + 1], two[j + 1]);
        length += Math.max(0, to - from);
      }
    }
    return length;
  }
}
