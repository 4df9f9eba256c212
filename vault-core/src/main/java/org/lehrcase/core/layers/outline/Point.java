package org.lehrcase.core.layers.outline;

/**
 * A point of the picture; y grows downwards.
 *
 * @param xMm from the left edge
 * @param yMm from the upper edge
 */
public record Point(double xMm, double yMm) {
  /** Farthest from the picture's corner that is taken for a point of it. */
  static final double FARTHEST_MM = 100_000;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if a coordinate is no number or absurdly far away
   */
  public Point {
    if (!(Math.abs(xMm) <= FARTHEST_MM && Math.abs(yMm) <= FARTHEST_MM)) {
      throw new IllegalArgumentException("a point lies more than 100 m away from the picture");
    }
  }

  /** Returns twice the area of the triangle to two others, positive one way round. */
  double turn(Point next, Point afterwards) {
    return (next.xMm - xMm) * (afterwards.yMm - yMm) - (next.yMm - yMm) * (afterwards.xMm - xMm);
  }
}
