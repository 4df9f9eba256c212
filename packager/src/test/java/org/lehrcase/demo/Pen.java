package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;

/**
 * Something to draw with: a film frame, a PDF page or an SVG template. One drawing serves all
 * three. Coordinates grow to the right and down; the unit is the pen's own.
 */
interface Pen {
  /** Fills a shape. */
  void fill(Shape shape, Color color);

  /** Draws along a shape; {@code dash} may be empty. */
  void line(Shape shape, Color color, double width, double... dash);

  /** Writes one line of text with its baseline at {@code y}. */
  void text(String text, double x, double y, Type type);

  /** Places painted sheet {@code number} (180 x 130 units, scaled by {@code place}). */
  default void sheet(int number, AffineTransform place, double opacity) {
    Pen placed = under(place);
    for (Patch patch : Reef.sheet(number)) {
      placed.fill(patch.shape(), Palette.alpha(patch.shown(number), opacity));
    }
  }

  /** Returns a pen whose drawings pass through {@code place} first. */
  default Pen under(AffineTransform place) {
    return new PlacedPen(this, place);
  }

  /** Returns a pen moved to (x, y) and scaled. */
  default Pen at(double x, double y, double scale) {
    return under(new AffineTransform(scale, 0, 0, scale, x, y));
  }

  static Shape box(double x, double y, double width, double height) {
    return new Rectangle2D.Double(x, y, width, height);
  }

  static Shape soft(double x, double y, double width, double height, double radius) {
    return new RoundRectangle2D.Double(x, y, width, height, 2 * radius, 2 * radius);
  }

  static Shape dot(double x, double y, double radius) {
    return new Ellipse2D.Double(x - radius, y - radius, 2 * radius, 2 * radius);
  }

  static Shape way(double... xy) {
    if (xy.length == 4) {
      return new Line2D.Double(xy[0], xy[1], xy[2], xy[3]);
    }
    Path2D path = new Path2D.Double();
    path.moveTo(xy[0], xy[1]);
    for (int i = 2; i < xy.length; i += 2) {
      path.lineTo(xy[i], xy[i + 1]);
    }
    return path;
  }

  static Shape polygon(double... xy) {
    Path2D path = new Path2D.Double(way(xy));
    path.closePath();
    return path;
  }

  /** Draws an arrow with a filled head at its second end. */
  default void arrow(Point2D from, Point2D to, Color color, double width) {
    double angle = Math.atan2(to.getY() - from.getY(), to.getX() - from.getX());
    double head = 4.5 * width;
    double bx = to.getX() - head * Math.cos(angle);
    double by = to.getY() - head * Math.sin(angle);
    line(way(from.getX(), from.getY(), bx, by), color, width);
    double nx = -Math.sin(angle) * head * 0.5;
    double ny = Math.cos(angle) * head * 0.5;
    fill(polygon(to.getX(), to.getY(), bx + nx, by + ny, bx - nx, by - ny), color);
  }
}
