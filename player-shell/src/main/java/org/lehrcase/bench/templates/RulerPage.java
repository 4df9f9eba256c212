package org.lehrcase.bench.templates;

import java.io.IOException;
import org.lehrcase.bench.templates.MmPen.Line;

/** The page to print first: two rulers and a small shape to lay on glass. */
final class RulerPage {
  private static final double INCH_MM = 25.4;
  private static final double SQUARE_MM = 50;

  private RulerPage() {}

  static void add(Pages pages) throws IOException {
    MmPen pen = pages.upright();
    double left = Pages.MARGIN_MM;
    pen.bold(left, 20, 6, "Ruler page");
    double y =
        pen.paragraph(
            left,
            28,
            Pages.TEXT_MM,
            pages.widthMm(),
            "Print this page first, at 100 % (\"actual size\", no fitting). Lay a good ruler on both"
                + " lines and type what it reads at \"What does your ruler read?\".");
    if (pages.wish().isCorrected()) {
      pen.paragraph(
          left,
          y,
          Pages.TEXT_MM,
          pages.widthMm(),
          "Corrected for your printer: both read 100 now.");
    }
    Rulers.across(pen.in(pages.frame(40, 60, false)));
    pen.text(40, 57, Pages.TEXT_MM, "across: 0 to 100 mm");
    Rulers.down(pen.in(pages.frame(32, 60, false)));
    pen.text(Pages.MARGIN_MM, 166, Pages.TEXT_MM, "down: 0 to 100 mm");
    inches(pen.in(pages.frame(40, 84, false)));
    MmPen square = pen.in(pages.frame(40, 100, false));
    square.box(Line.OUTLINE, 0, 0, SQUARE_MM, SQUARE_MM);
    square.middle(SQUARE_MM / 2, SQUARE_MM / 2, 2.6, "50 × 50 mm: lay it on glass");
    pen.text(40, 186, Pages.TEXT_MM, "94.1 means: an A4 page fitted on Letter. 97.3: the reverse.");
  }

  private static void inches(MmPen pen) throws IOException {
    pen.line(Line.EDGE, 0, 0, 4 * INCH_MM, 0);
    for (int sixteenth = 0; sixteenth <= 64; sixteenth++) {
      double x = sixteenth * INCH_MM / 16;
      double high = sixteenth % 16 == 0 ? 3.2 : sixteenth % 8 == 0 ? 2.4 : 1.5;
      pen.line(Line.HAIR, x, 0, x, high);
      if (sixteenth % 16 == 0) {
        pen.middle(x, 5.5, 2.1, sixteenth / 16 + " in");
      }
    }
  }
}
