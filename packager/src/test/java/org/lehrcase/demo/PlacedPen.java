package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;

/** A pen seen through an affine placement; text keeps upright and scales with the placement. */
record PlacedPen(Pen base, AffineTransform place) implements Pen {
  private double scale() {
    return Math.sqrt(Math.abs(place.getDeterminant()));
  }

  @Override
  public void fill(Shape shape, Color color) {
    base.fill(place.createTransformedShape(shape), color);
  }

  @Override
  public void line(Shape shape, Color color, double width, double... dash) {
    double[] scaled = dash.clone();
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] *= scale();
    }
    base.line(place.createTransformedShape(shape), color, width * scale(), scaled);
  }

  @Override
  public void text(String text, double x, double y, Type type) {
    Point2D at = place.transform(new Point2D.Double(x, y), null);
    base.text(text, at.getX(), at.getY(), type.sized(type.size() * scale()));
  }

  @Override
  public void sheet(int number, AffineTransform where, double opacity) {
    AffineTransform all = new AffineTransform(place);
    all.concatenate(where);
    base.sheet(number, all, opacity);
  }
}
