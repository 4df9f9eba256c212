package org.lehrcase.bench.templates;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.lehrcase.bench.printing.PaperPen;
import org.lehrcase.core.layers.outline.Point;
import org.lehrcase.core.layers.paper.Paper;

/**
 * Draws in millimetres, downwards, from an origin on a page; every length is multiplied once, where
 * it becomes points.
 */
final class MmPen {
  private final PDPageContentStream out;
  private final PDFont font;
  private final double pageHeightMm;
  private final Frame frame;
  private final PaperPen words;

  /**
   * Where the drawing lies.
   *
   * @param xMm its origin on the page, from the left
   * @param yMm from the upper edge
   * @param kx by how much it is drawn wider, 1 unless the printer is corrected
   * @param ky by how much it is drawn higher
   */
  record Frame(double xMm, double yMm, double kx, double ky) {
    /** The page itself. */
    static final Frame PAGE = new Frame(0, 0, 1, 1);
  }

  /** A line: its width, its shade (0 black), its dashes (none if empty), in millimetres. */
  record Line(double widthMm, float grey, float... dashMm) {
    static final Line OUTLINE = new Line(0.35, 0);
    static final Line HAIR = new Line(0.12, 0.25f);
    static final Line EDGE = new Line(0.25, 0);
    static final Line SHADOW = new Line(0.2, 0.35f, 1.6f, 1.2f);
  }

  MmPen(PDPageContentStream out, PDFont font, double pageHeightMm, Frame frame) {
    this.out = out;
    this.font = font;
    this.pageHeightMm = pageHeightMm;
    this.frame = frame;
    this.words = new PaperPen(out, font, (float) Paper.points(pageHeightMm));
  }

  /** Returns a pen on the same page with another origin. */
  MmPen in(Frame other) {
    return new MmPen(out, font, pageHeightMm, other);
  }

  float x(double mm) {
    return (float) Paper.points(frame.xMm() + frame.kx() * mm);
  }

  float y(double mm) {
    return (float) Paper.points(pageHeightMm - frame.yMm() - frame.ky() * mm);
  }

  private void set(Line line) throws IOException {
    out.setLineWidth((float) Paper.points(line.widthMm()));
    out.setStrokingColor(line.grey(), line.grey(), line.grey());
    float[] dash = line.dashMm().clone();
    for (int i = 0; i < dash.length; i++) {
      dash[i] = (float) Paper.points(dash[i]);
    }
    out.setLineDashPattern(dash, 0);
  }

  void line(Line line, double x1, double y1, double x2, double y2) throws IOException {
    set(line);
    out.moveTo(x(x1), y(y1));
    out.lineTo(x(x2), y(y2));
    out.stroke();
  }

  void box(Line line, double left, double top, double width, double height) throws IOException {
    polygon(line, corners(left, top, width, height));
  }

  void fill(float grey, double left, double top, double width, double height) throws IOException {
    fill(grey, corners(left, top, width, height));
  }

  static List<Point> corners(double left, double top, double width, double height) {
    return List.of(
        new Point(left, top),
        new Point(left + width, top),
        new Point(left + width, top + height),
        new Point(left, top + height));
  }

  void polygon(Line line, List<Point> corners) throws IOException {
    set(line);
    out.setLineJoinStyle(1);
    trace(corners);
    out.stroke();
  }

  void fill(float grey, List<Point> corners) throws IOException {
    out.setNonStrokingColor(grey, grey, grey);
    trace(corners);
    out.fill();
  }

  private void trace(List<Point> corners) throws IOException {
    out.moveTo(x(corners.get(0).xMm()), y(corners.get(0).yMm()));
    for (Point corner : corners.subList(1, corners.size())) {
      out.lineTo(x(corner.xMm()), y(corner.yMm()));
    }
    out.closePath();
  }

  /** Draws only inside a shape until {@link #release}. */
  void clip(List<Point> corners) throws IOException {
    out.saveGraphicsState();
    trace(corners);
    out.clip();
  }

  void release() throws IOException {
    out.restoreGraphicsState();
  }

  private PaperPen.At at(double xMm, double yMm, double sizeMm) {
    float top = (float) Paper.points(frame.yMm() + frame.ky() * yMm);
    return new PaperPen.At(x(xMm), top, (float) Paper.points(sizeMm));
  }

  void text(double xMm, double yMm, double sizeMm, String text) throws IOException {
    words.grey(0);
    words.text(at(xMm, yMm, sizeMm), text);
  }

  void bold(double xMm, double yMm, double sizeMm, String text) throws IOException {
    words.grey(0);
    words.bold(at(xMm, yMm, sizeMm), text);
  }

  void middle(double xMm, double yMm, double sizeMm, String text) throws IOException {
    text(xMm - widthMm(text, sizeMm) / 2 / frame.kx(), yMm, sizeMm, text);
  }

  void endingAt(double xMm, double yMm, double sizeMm, String text) throws IOException {
    words.grey(0);
    words.textUpTo(at(xMm, yMm, sizeMm), text);
  }

  /** Writes on one line, in smaller letters if it would be too long. */
  void fitted(double xMm, double yMm, double sizeMm, double widthMm, String text)
      throws IOException {
    double wide = widthMm(text, sizeMm);
    text(xMm, yMm, wide > widthMm ? sizeMm * widthMm / wide : sizeMm, text);
  }

  /** Writes lines of a width; returns where the next would stand. */
  double paragraph(double xMm, double yMm, double sizeMm, double widthMm, String text)
      throws IOException {
    words.grey(0);
    float next = words.paragraph(at(xMm, yMm, sizeMm), (float) Paper.points(widthMm), text);
    return yMm + (next / Paper.points(1) - frame.yMm() - frame.ky() * yMm) / frame.ky();
  }

  /** Puts a picture into a square, as large as fits, at its upper left; returns its height. */
  double image(PDImageXObject image, double left, double top, double sideMm) throws IOException {
    double scale = sideMm / Math.max(image.getWidth(), image.getHeight());
    double wide = image.getWidth() * scale;
    double high = image.getHeight() * scale;
    float width = (float) Paper.points(wide);
    out.drawImage(image, x(left), y(top + high), width, (float) Paper.points(high));
    return high;
  }

  double widthMm(String text, double sizeMm) throws IOException {
    return words.width(text, (float) Paper.points(sizeMm)) / Paper.points(1);
  }
}
