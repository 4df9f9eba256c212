package org.lehrcase.bench.printing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.printing.PaperPen.At;

/** The kiln sheet on one page of paper: it must do at the kiln, without the computer. */
public final class KilnSheetPdf {
  private static final float MARGIN = 40;
  private static final float BODY = 9;
  private static final float SMALL = 6.6f;
  private static final float CURVE_HEIGHT = 150;
  private static final float TALLEST_ROW = 16;
  private static final float LOWEST_ROW = 9;
  private static final float LEAST_GREY = 0.35f;
  private static final float[] COLUMNS = {0, 24, 74, 124, 172, 350, 440};

  private final KilnSheetPaper paper;
  private final PaperPen pen;
  private final float width;
  private final float height;
  private float y = MARGIN;

  private KilnSheetPdf(KilnSheetPaper paper, PaperPen pen, PDRectangle page) {
    this.paper = paper;
    this.pen = pen;
    this.width = page.getWidth() - 2 * MARGIN;
    this.height = page.getHeight();
  }

  /**
   * Draws a sheet.
   *
   * @param paper what stands on it
   * @return a PDF of one page
   * @throws IOException if the program is incomplete
   */
  public static byte[] of(KilnSheetPaper paper) throws IOException {
    PDRectangle size = paper.letter() ? PDRectangle.LETTER : PDRectangle.A4;
    try (PDDocument document = new PDDocument();
        @Nullable InputStream in = KilnSheetPdf.class.getResourceAsStream("DejaVuSans.ttf")) {
      if (in == null) {
        throw new IOException("the program is incomplete: the font of prints is missing");
      }
      PDPage page = new PDPage(size);
      document.addPage(page);
      document.getDocumentInformation().setTitle(paper.title());
      PDType0Font font = PDType0Font.load(document, in, true);
      try (PDPageContentStream out = new PDPageContentStream(document, page)) {
        new KilnSheetPdf(paper, new PaperPen(out, font, size.getHeight()), size).draw();
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    }
  }

  private void draw() throws IOException {
    y += 6;
    pen.bold(new At(MARGIN, y, 15), "Kiln sheet: " + paper.title());
    y += 15;
    for (String fact : paper.facts()) {
      y = pen.paragraph(new At(MARGIN, y, BODY), width, fact);
    }
    y += 4;
    for (String sentence : paper.sentences()) {
      y = pen.paragraph(new At(MARGIN, y, BODY + 0.8f), width, sentence);
    }
    curve();
    float below = tail();
    lines(below);
    clock();
    cautions();
  }

  /** What the clock, the cautions and the foot will need below the table. */
  private float tail() throws IOException {
    float need = 26 + clockRows() * BODY * 1.45f;
    for (String caution : paper.cautions()) {
      need += pen.wrapped(caution, SMALL, cautionWidth()).size() * SMALL * 1.3f / 2;
    }
    return need + 44;
  }

  private void curve() throws IOException {
    PaperCurve curve =
        new PaperCurve(
            paper.curve(), pen, new PaperCurve.Box(MARGIN + 30, y + 8, width - 36, CURVE_HEIGHT));
    curve.draw();
    y += CURVE_HEIGHT + 32;
  }

  private void lines(float below) throws IOException {
    pen.bold(new At(MARGIN, y, 11), "Type into the controller");
    y = pen.paragraph(new At(MARGIN, y + 11, SMALL), width, paper.linesNote()) + 4;
    float room = height - MARGIN - below - y;
    int fit = (int) Math.max(5, Math.floor(room / LOWEST_ROW) - 2);
    int shown = Math.min(paper.lines().size(), fit);
    float row = Math.max(LOWEST_ROW, Math.min(TALLEST_ROW, room / (shown + 1)));
    float size = Math.min(BODY + 0.5f, row - 2.5f);
    row(new At(0, y, SMALL), "", "rate an hour", "to", "hold", "for", "ends", "seen, o'clock");
    for (int i = 0; i < shown; i++) {
      y += row;
      KilnSheetPaper.Line line = paper.lines().get(i);
      row(
          new At(0, y, size),
          String.valueOf(i + 1),
          line.rate(),
          line.target(),
          line.hold(),
          line.what(),
          line.ends(),
          "");
      pen.grey(0.7f);
      pen.line(MARGIN, y + 3, MARGIN + width, y + 3);
      pen.grey(0);
    }
    if (shown < paper.lines().size()) {
      y += row;
      pen.bold(
          new At(MARGIN, y, SMALL),
          "and " + (paper.lines().size() - shown) + " lines more: see the screen");
    }
    y += 16;
  }

  private void row(At at, String... cells) throws IOException {
    for (int i = 0; i < cells.length; i++) {
      At cell = new At(MARGIN + COLUMNS[i], at.y(), at.size());
      if (i > 0 && i < 4 && at.size() > SMALL) {
        pen.bold(cell, cells[i]);
      } else {
        pen.text(cell, cells[i]);
      }
    }
  }

  /** The times stand in two columns. */
  private int clockRows() {
    return (paper.clock().size() + 1) / 2;
  }

  private void clock() throws IOException {
    pen.bold(new At(MARGIN, y, 11), "The clock (\u25ba be there)");
    int rows = clockRows();
    for (int i = 0; i < paper.clock().size(); i++) {
      KilnSheetPaper.Time time = paper.clock().get(i);
      int column = i / rows;
      float x = MARGIN + column * width / 2;
      float at = y + 13 + (i % rows) * BODY * 1.45f;
      String words = (time.present() ? "\u25ba " : "   ") + time.what();
      pen.text(new At(x, at, SMALL + 0.6f), words);
      pen.bold(new At(x + 122, at, SMALL + 0.6f), time.when());
    }
    y += 16 + rows * BODY * 1.45f;
  }

  private float cautionWidth() {
    return width / 2 - 8;
  }

  private void cautions() throws IOException {
    pen.grey(LEAST_GREY);
    float start = y;
    float left = y;
    float right = start;
    for (String caution : paper.cautions()) {
      boolean first = left <= right;
      float x = first ? MARGIN : MARGIN + width / 2 + 4;
      float after =
          pen.paragraph(new At(x, first ? left : right, SMALL), cautionWidth(), "• " + caution);
      left = first ? after : left;
      right = first ? right : after;
    }
    pen.grey(0);
    pen.bold(new At(MARGIN, height - MARGIN + 8, SMALL + 0.8f), paper.foot());
  }
}
