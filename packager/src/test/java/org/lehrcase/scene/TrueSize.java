package org.lehrcase.scene;

import java.awt.geom.Point2D;
import java.io.IOException;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** Measures what a PDF draws, in millimetres on paper. */
final class TrueSize extends PDFGraphicsStreamEngine {
  private static final double MILLIMETRES_PER_POINT = 25.4 / 72;

  private final Point2D.Float current = new Point2D.Float();
  private double widestPoints;

  private TrueSize(PDPage page) {
    super(page);
  }

  /** Returns the length of the longest horizontal straight line of the first page. */
  static double longestHorizontalMillimetres(PDDocument document) throws IOException {
    TrueSize engine = new TrueSize(document.getPage(0));
    engine.processPage(document.getPage(0));
    return engine.widestPoints * MILLIMETRES_PER_POINT;
  }

  private void line(double fromX, double fromY, double toX, double toY) {
    if (Math.abs(fromY - toY) < 0.5 && Math.abs(toX - fromX) < 560) {
      widestPoints = Math.max(widestPoints, Math.abs(toX - fromX));
    }
  }

  @Override
  public void appendRectangle(Point2D p0, Point2D p1, Point2D p2, Point2D p3) {
    line(p0.getX(), p0.getY(), p1.getX(), p1.getY());
  }

  @Override
  public void moveTo(float x, float y) {
    current.setLocation(x, y);
  }

  @Override
  public void lineTo(float x, float y) {
    line(current.getX(), current.getY(), x, y);
    current.setLocation(x, y);
  }

  @Override
  public void curveTo(float x1, float y1, float x2, float y2, float x3, float y3) {
    current.setLocation(x3, y3);
  }

  @Override
  public Point2D getCurrentPoint() {
    return current;
  }

  @Override
  public void closePath() {}

  @Override
  public void endPath() {}

  @Override
  public void strokePath() {}

  @Override
  public void fillPath(int windingRule) {}

  @Override
  public void fillAndStrokePath(int windingRule) {}

  @Override
  public void shadingFill(COSName shadingName) {}

  @Override
  public void clip(int windingRule) {}

  @Override
  public void drawImage(PDImage image) {}
}
