package org.lehrcase.core.layers.outline;

/**
 * An upright rectangle of the picture.
 *
 * @param x0Mm left
 * @param y0Mm upper
 * @param x1Mm right
 * @param y1Mm lower
 */
public record Box(double x0Mm, double y0Mm, double x1Mm, double y1Mm) {
  /**
   * Checks the order of the corners.
   *
   * @throws IllegalArgumentException if it has no width or no height
   */
  public Box {
    if (!(x1Mm > x0Mm && y1Mm > y0Mm)) {
      throw new IllegalArgumentException(
          "a box is [left, upper, right, lower] and must have a width and a height");
    }
  }

  /** Returns the width. */
  public double widthMm() {
    return x1Mm - x0Mm;
  }

  /** Returns the height. */
  public double heightMm() {
    return y1Mm - y0Mm;
  }

  /**
   * Says whether two boxes share more than an edge.
   *
   * @param clearMm they also count as overlapping when they are closer than this
   */
  public boolean overlaps(Box other, double clearMm) {
    return x0Mm - clearMm < other.x1Mm
        && other.x0Mm - clearMm < x1Mm
        && y0Mm - clearMm < other.y1Mm
        && other.y0Mm - clearMm < y1Mm;
  }
}
