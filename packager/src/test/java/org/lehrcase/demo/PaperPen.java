package org.lehrcase.demo;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;
import org.apache.pdfbox.util.Matrix;

/** A pen that draws on one PDF page; the unit is one millimetre from the upper left corner. */
final class PaperPen implements Pen, AutoCloseable {
  static final double POINTS_PER_MM = 72 / 25.4;
  private final PaperFonts fonts;
  private final PDPageContentStream content;
  private int opacity = 255;

  PaperPen(PaperFonts fonts, PDPage page) throws IOException {
    this.fonts = fonts;
    this.content = new PDPageContentStream(fonts.document(), page);
    float height = page.getMediaBox().getHeight();
    float s = (float) POINTS_PER_MM;
    content.transform(new Matrix(s, 0, 0, -s, 0, height));
  }

  @Override
  public void fill(Shape shape, Color color) {
    run(
        () -> {
          ink(color);
          content.setNonStrokingColor(opaque(color));
          boolean evenOdd = trace(shape);
          if (evenOdd) {
            content.fillEvenOdd();
          } else {
            content.fill();
          }
        });
  }

  @Override
  public void line(Shape shape, Color color, double width, double... dash) {
    run(
        () -> {
          ink(color);
          content.setStrokingColor(opaque(color));
          content.setLineWidth((float) width);
          content.setLineCapStyle(1);
          content.setLineJoinStyle(1);
          float[] pattern = new float[dash.length];
          for (int i = 0; i < dash.length; i++) {
            pattern[i] = (float) dash[i];
          }
          content.setLineDashPattern(pattern, 0);
          trace(shape);
          content.stroke();
        });
  }

  @Override
  public void text(String text, double x, double y, Type type) {
    double width = fonts.width(text, type);
    double left =
        switch (type.align()) {
          case LEFT -> x;
          case CENTER -> x - width / 2;
          case RIGHT -> x - width;
        };
    run(
        () -> {
          ink(type.color());
          content.setNonStrokingColor(opaque(type.color()));
          content.beginText();
          content.setFont(fonts.font(type.face()), (float) type.size());
          content.setTextMatrix(new Matrix(1, 0, 0, -1, (float) left, (float) y));
          content.showText(text);
          content.endText();
        });
  }

  /** Cuts everything drawn until {@link #uncut} to a shape. */
  void cut(Shape shape) {
    run(
        () -> {
          content.saveGraphicsState();
          trace(shape);
          content.clip();
        });
  }

  void uncut() {
    run(
        () -> {
          content.restoreGraphicsState();
          opacity = -1;
        });
  }

  private void ink(Color color) throws IOException {
    if (color.getAlpha() != opacity) {
      opacity = color.getAlpha();
      PDExtendedGraphicsState state = fonts.opacity(opacity);
      content.setGraphicsStateParameters(state);
    }
  }

  private static Color opaque(Color color) {
    return new Color(color.getRGB() & 0xFFFFFF);
  }

  private boolean trace(Shape shape) throws IOException {
    PathIterator path = shape.getPathIterator(null);
    float[] c = new float[6];
    float x = 0;
    float y = 0;
    for (; !path.isDone(); path.next()) {
      int kind = path.currentSegment(c);
      if (kind == PathIterator.SEG_MOVETO) {
        content.moveTo(c[0], c[1]);
      } else if (kind == PathIterator.SEG_LINETO) {
        content.lineTo(c[0], c[1]);
      } else if (kind == PathIterator.SEG_QUADTO) {
        content.curveTo(
            x + (c[0] - x) * 2 / 3,
            y + (c[1] - y) * 2 / 3,
            c[2] + (c[0] - c[2]) * 2 / 3,
            c[3] + (c[1] - c[3]) * 2 / 3,
            c[2],
            c[3]);
      } else if (kind == PathIterator.SEG_CUBICTO) {
        content.curveTo(c[0], c[1], c[2], c[3], c[4], c[5]);
      } else {
        content.closePath();
      }
      int last = kind == PathIterator.SEG_CUBICTO ? 4 : kind == PathIterator.SEG_QUADTO ? 2 : 0;
      x = c[last];
      y = c[last + 1];
    }
    return path.getWindingRule() == PathIterator.WIND_EVEN_ODD;
  }

  private interface Drawing {
    void run() throws IOException;
  }

  private static void run(Drawing drawing) {
    try {
      drawing.run();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() throws IOException {
    content.close();
  }
}
