package org.lehrcase.bench.templates;

import java.awt.geom.Point2D;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.contentstream.PDFGraphicsStreamEngine;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.graphics.image.PDImage;

/** Every stroked line of a page, in millimetres from its upper left corner, as it was written. */
final class PageLines extends PDFGraphicsStreamEngine {
  private static final double MM = 25.4 / 72;

  private final double heightPoints;
  private final List<List<Point2D>> open = new ArrayList<>();
  private final List<Stroke> strokes = new ArrayList<>();
  private Point2D current = new Point2D.Double();

  /** A stroked line: its corners and its width. */
  record Stroke(List<Point2D> points, double widthMm, boolean dashed) {
    double lengthMm() {
      return points.get(0).distance(points.get(points.size() - 1));
    }
  }

  private PageLines(PDPage page) {
    super(page);
    this.heightPoints = page.getMediaBox().getHeight();
  }

  static List<Stroke> of(PDPage page) throws IOException {
    PageLines lines = new PageLines(page);
    lines.processPage(page);
    return lines.strokes;
  }

  private Point2D mm(double x, double y) {
    return new Point2D.Double(x * MM, (heightPoints - y) * MM);
  }

  @Override
  public void moveTo(float x, float y) {
    current = new Point2D.Double(x, y);
    open.add(new ArrayList<>(List.of(mm(x, y))));
  }

  @Override
  public void lineTo(float x, float y) {
    current = new Point2D.Double(x, y);
    open.get(open.size() - 1).add(mm(x, y));
  }

  @Override
  public void strokePath() {
    double width = getGraphicsState().getLineWidth() * MM;
    boolean dashed = getGraphicsState().getLineDashPattern().getDashArray().length > 0;
    open.forEach(line -> strokes.add(new Stroke(List.copyOf(line), width, dashed)));
    open.clear();
  }

  @Override
  public void endPath() {
    open.clear();
  }

  @Override
  public void fillPath(int rule) {
    open.clear();
  }

  @Override
  public void fillAndStrokePath(int rule) {
    open.clear();
  }

  @Override
  public Point2D getCurrentPoint() {
    return current;
  }

  @Override
  public void appendRectangle(Point2D a, Point2D b, Point2D c, Point2D d) {
    throw new AssertionError("no rectangle is written");
  }

  @Override
  public void curveTo(float a, float b, float c, float d, float e, float f) {
    throw new AssertionError("no curve is written");
  }

  @Override
  public void closePath() {
    // The corners are what is looked at.
  }

  @Override
  public void clip(int rule) {
    // Lines outside are read too.
  }

  @Override
  public void drawImage(PDImage image) {
    throw new AssertionError("a template is made of lines");
  }

  @Override
  public void shadingFill(COSName name) {
    throw new AssertionError("a template is made of lines");
  }
}
