package org.lehrcase.bench.printing;

import java.io.IOException;
import org.lehrcase.bench.printing.PaperPen.At;

/** Rows of the table that is typed into the controller. */
final class LineRows {
  private static final float[] COLUMNS = {0, 24, 74, 124, 172, 350, 440};
  private static final float SMALL = 6.6f;

  private final PaperPen pen;
  private final float left;
  private final float width;

  LineRows(PaperPen pen, float left, float width) {
    this.pen = pen;
    this.left = left;
    this.width = width;
  }

  void head(float y) throws IOException {
    row(new At(0, y, SMALL), "", "rate an hour", "to", "hold", "for", "ends", "seen, o'clock");
  }

  void line(At at, int number, KilnSheetPaper.Line line) throws IOException {
    row(
        at,
        String.valueOf(number),
        line.rate(),
        line.target(),
        line.hold(),
        line.what(),
        line.ends(),
        "");
    pen.grey(0.7f);
    pen.line(left, at.y() + 3, left + width, at.y() + 3);
    pen.grey(0);
  }

  private void row(At at, String... cells) throws IOException {
    for (int i = 0; i < cells.length; i++) {
      At cell = new At(left + COLUMNS[i], at.y(), at.size());
      if (i > 0 && i < 4 && at.size() > SMALL) {
        pen.bold(cell, cells[i]);
      } else {
        pen.text(cell, cells[i]);
      }
    }
  }
}
