package org.lehrcase.bench.printing;

import static org.lehrcase.core.layers.paper.Paper.points;

import java.io.IOException;
import org.lehrcase.bench.printing.PaperPen.At;

/** A ruler of exactly 100 mm with inches below it: what a print is measured by. */
final class PrintedRuler {
  private static final int LONG_MM = 100;
  private static final double INCH_MM = 25.4;
  private static final double INCHES_AT_MM = 16;
  private static final float LETTERS = 6;

  private final PaperPen pen;
  private final double leftMm;
  private final double topMm;

  private PrintedRuler(PaperPen pen, double leftMm, double topMm) {
    this.pen = pen;
    this.leftMm = leftMm;
    this.topMm = topMm;
  }

  /** Draws it with its zero mark at the place, 16 mm high. */
  static void draw(PaperPen pen, double leftMm, double topMm) throws IOException {
    PrintedRuler ruler = new PrintedRuler(pen, leftMm, topMm);
    pen.grey(0);
    ruler.line(0, 0, LONG_MM, 0);
    ruler.line(0, INCHES_AT_MM, LONG_MM, INCHES_AT_MM);
    ruler.millimetres();
    ruler.inches();
  }

  private void millimetres() throws IOException {
    for (int mm = 0; mm <= LONG_MM; mm++) {
      boolean ten = mm % 10 == 0;
      line(mm, 0, mm, ten ? 5 : mm % 5 == 0 ? 3.5 : 2);
      if (ten) {
        word(mm - 1.5, 7.6, mm == LONG_MM ? "100 mm" : String.valueOf(mm));
      }
    }
  }

  private void inches() throws IOException {
    for (int sixteenth = 0; sixteenth * INCH_MM / 16 <= LONG_MM; sixteenth++) {
      double x = sixteenth * INCH_MM / 16;
      double length = sixteenth % 16 == 0 ? 5 : sixteenth % 8 == 0 ? 3.5 : 2;
      line(x, INCHES_AT_MM, x, INCHES_AT_MM - length);
      if (sixteenth % 16 == 0) {
        word(x + 0.6, 11.6, sixteenth / 16 + "\u2033");
      }
    }
  }

  private void line(double x1, double y1, double x2, double y2) throws IOException {
    pen.line(across(x1), down(y1), across(x2), down(y2));
  }

  private void word(double x, double y, String word) throws IOException {
    pen.text(new At(across(x), down(y), LETTERS), word);
  }

  private float across(double mm) {
    return (float) points(leftMm + mm);
  }

  private float down(double mm) {
    return (float) points(topMm + mm);
  }
}
