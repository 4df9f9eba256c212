package org.lehrcase.bench.templates;

import java.io.IOException;
import java.util.List;
import org.lehrcase.bench.templates.MmPen.Line;

/** Text and rows from top to bottom, with a new page when one is full. */
final class TextPages {
  private static final double ROW_MM = 5.2;

  private final Pages pages;
  private final String title;
  private MmPen pen;
  private double y;

  TextPages(Pages pages, String title) throws IOException {
    this.pages = pages;
    this.title = title;
    this.pen = pages.upright();
    pen.bold(Pages.MARGIN_MM, 20, 5.5, title);
    this.y = 28;
  }

  MmPen pen() {
    return pen;
  }

  double y() {
    return y;
  }

  /** Goes to a new page if so much does not fit any more. */
  void need(double mm) throws IOException {
    if (y + mm > pages.bottomMm()) {
      pen = pages.upright();
      pen.text(Pages.MARGIN_MM, 16, 3, title + ", continued");
      y = 24;
    }
  }

  void down(double mm) {
    y += mm;
  }

  void heading(String words) throws IOException {
    need(16);
    y += 3;
    pen.bold(Pages.MARGIN_MM, y, 4, words);
    y += 6;
  }

  void paragraph(String words) throws IOException {
    for (String line : words.split("\\R")) {
      need(12);
      y = pen.paragraph(Pages.MARGIN_MM, y, Pages.TEXT_MM, pages.widthMm(), line);
    }
    y += 1;
  }

  /** Writes cells beside each other; {@code shares} are their parts of the width. */
  void row(List<String> cells, double... shares) throws IOException {
    need(ROW_MM);
    double x = Pages.MARGIN_MM;
    for (int i = 0; i < cells.size(); i++) {
      double wide = shares[i] * pages.widthMm();
      pen.fitted(x, y, Pages.TEXT_MM, wide - 2, cells.get(i));
      x += wide;
    }
    pen.line(Line.HAIR, Pages.MARGIN_MM, y + 1.4, Pages.MARGIN_MM + pages.widthMm(), y + 1.4);
    y += ROW_MM;
  }
}
