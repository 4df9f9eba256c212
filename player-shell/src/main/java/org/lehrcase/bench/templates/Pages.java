package org.lehrcase.bench.templates;

import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.lehrcase.bench.printing.PaperBook;
import org.lehrcase.core.layers.paper.Paper;

/** The pages of one paper, in millimetres, on the student's paper size. */
final class Pages {
  /** Between the text of a page and its edge. */
  static final double MARGIN_MM = 15;

  /** Size of ordinary letters. */
  static final double TEXT_MM = 3.3;

  private final PaperBook book;
  private final PaperWish wish;

  Pages(PaperBook book, PaperWish wish) {
    this.book = book;
    this.wish = wish;
  }

  PaperWish wish() {
    return wish;
  }

  PaperBook book() {
    return book;
  }

  /** Begins an upright page. */
  MmPen upright() throws IOException {
    return page(false);
  }

  MmPen page(boolean landscape) throws IOException {
    Paper paper = landscape ? wish.paper().turned() : wish.paper();
    var size =
        new PDRectangle(
            (float) Paper.points(paper.widthMm()), (float) Paper.points(paper.heightMm()));
    PDPageContentStream out = book.page(size);
    return new MmPen(out, book.font(), paper.heightMm(), MmPen.Frame.PAGE);
  }

  /** Returns the width between the margins of an upright page. */
  double widthMm() {
    return wish.paper().widthMm() - 2 * MARGIN_MM;
  }

  /** Returns where an upright page ends. */
  double bottomMm() {
    return wish.paper().heightMm() - MARGIN_MM;
  }

  /** Returns an origin with the printer's faults made up for, which follow the paper's sides. */
  MmPen.Frame frame(double xMm, double yMm, boolean landscape) {
    return landscape
        ? new MmPen.Frame(xMm, yMm, wish.down(), wish.across())
        : new MmPen.Frame(xMm, yMm, wish.across(), wish.down());
  }
}
