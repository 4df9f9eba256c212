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

/**
 * The kiln sheet on one page of paper: it must do at the kiln, without the computer. Only lines
 * that find no room there, those of a staircase, go on behind it.
 */
public final class KilnSheetPdf {
  private static final float MARGIN = 40;
  private static final float BODY = 9;
  private static final float SMALL = 6.6f;
  private static final float CURVE_HEIGHT = 150;
  private static final float TALLEST_ROW = 16;
  private static final float LOWEST_ROW = 9;
  private static final float LEAST_GREY = 0.35f;
  private static final float NEXT_PAGE_ROW = 11;

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
   * @return a PDF of one page; the lines of a staircase that find no room stand on the next
   * @throws IOException if the program is incomplete
   */
  public static byte[] of(KilnSheetPaper paper) throws IOException {
    PDRectangle size = paper.letter() ? PDRectangle.LETTER : PDRectangle.A4;
    try (PDDocument document = new PDDocument();
        @Nullable InputStream in = KilnSheetPdf.class.getResourceAsStream("DejaVuSans.ttf")) {
      if (in == null) {
        throw new IOException("the program is incomplete: the font of prints is missing");
      }
      document.getDocumentInformation().setTitle(paper.title());
      PDType0Font font = PDType0Font.load(document, in, true);
      int next = 0;
      do {
        PDPage page = new PDPage(size);
        document.addPage(page);
        try (PDPageContentStream out = new PDPageContentStream(document, page)) {
          var sheet = new KilnSheetPdf(paper, new PaperPen(out, font, size.getHeight()), size);
          next = next == 0 ? sheet.draw() : sheet.drawNext(next);
        }
      } while (next < paper.lines().size());
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return bytes.toByteArray();
    }
  }

  /** Draws the first page; returns how many lines found room on it. */
  private int draw() throws IOException {
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
    int shown = lines(below);
    clock();
    cautions();
    return shown;
  }

  /**
   * Lines that found no room on the first page: they too must be typed in. Returns the next one.
   */
  private int drawNext(int from) throws IOException {
    y += 6;
    pen.bold(new At(MARGIN, y, 11), "Kiln sheet: " + paper.title() + ", lines from " + (from + 1));
    y += 16;
    var rows = new LineRows(pen, MARGIN, width);
    rows.head(y);
    int next = from;
    while (next < paper.lines().size() && y + NEXT_PAGE_ROW < height - MARGIN) {
      y += NEXT_PAGE_ROW;
      rows.line(new At(0, y, BODY - 0.5f), next + 1, paper.lines().get(next));
      next++;
    }
    pen.bold(new At(MARGIN, height - MARGIN + 8, SMALL + 0.8f), paper.foot());
    return next;
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

  /** Returns how many lines found room. */
  private int lines(float below) throws IOException {
    pen.bold(new At(MARGIN, y, 11), "Type into the controller");
    y = pen.paragraph(new At(MARGIN, y + 11, SMALL), width, paper.linesNote()) + 4;
    float room = height - MARGIN - below - y;
    int fit = (int) Math.max(5, Math.floor(room / LOWEST_ROW) - 2);
    int shown = Math.min(paper.lines().size(), fit);
    float row = Math.max(LOWEST_ROW, Math.min(TALLEST_ROW, room / (shown + 1)));
    float size = Math.min(BODY + 0.5f, row - 2.5f);
    var rows = new LineRows(pen, MARGIN, width);
    rows.head(y);
    for (int i = 0; i < shown; i++) {
      y += row;
      rows.line(new At(0, y, size), i + 1, paper.lines().get(i));
    }
    if (shown < paper.lines().size()) {
      y += row;
      pen.bold(
          new At(MARGIN, y, SMALL),
          "lines " + (shown + 1) + " to " + paper.lines().size() + " stand on the next page");
    }
    y += 16;
    return shown;
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
