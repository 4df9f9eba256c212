package org.lehrcase.bench.printing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.printing.PaperPen.At;
import org.lehrcase.core.glass.CurvePoint;

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
    pen.bold(new At(MARGIN, y, 15), paper.title());
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
    float rows = (paper.clock().size() + 1) / 2;
    float need = 26 + rows * BODY * 1.45f;
    for (String caution : paper.cautions()) {
      need += pen.wrapped(caution, SMALL, cautionWidth()).size() * SMALL * 1.3f / 2;
    }
    return need + 44;
  }

  private void curve() throws IOException {
    float left = MARGIN + 30;
    float top = y + 8;
    float wide = width - 36;
    List<CurvePoint> mine = paper.curve().mine();
    List<CurvePoint> other = paper.curve().other();
    double hours = Math.max(last(mine), last(other));
    double hottest = Math.max(hottest(mine), hottest(other)) * 1.05;
    pen.grey(0.55f);
    pen.box(left, top, wide, CURVE_HEIGHT);
    double step = hottest > 1000 ? 400 : 200;
    for (double shown = step; shown < hottest; shown += step) {
      float at = top + CURVE_HEIGHT * (float) (1 - shown / hottest);
      pen.line(left, at, left + wide, at);
      pen.textUpTo(new At(left - 3, at + 2, SMALL), String.valueOf(Math.round(shown)));
    }
    double every = hours > 96 ? 24 : hours > 30 ? 12 : hours > 10 ? 4 : 1;
    for (double hour = every; hour < hours; hour += every) {
      float at = left + wide * (float) (hour / hours);
      pen.line(at, top + CURVE_HEIGHT - 3, at, top + CURVE_HEIGHT);
      pen.text(new At(at - 4, top + CURVE_HEIGHT + 8, SMALL), String.valueOf(Math.round(hour)));
    }
    pen.textUpTo(new At(left - 3, top + 5, SMALL), paper.curve().unit());
    pen.path(points(other, hours, hottest, new float[] {left, top, wide}), true);
    pen.grey(0);
    pen.path(points(mine, hours, hottest, new float[] {left, top, wide}), false);
    String legend = other.isEmpty() ? "" : "; dashed: " + paper.curve().otherName();
    pen.textUpTo(
        new At(left + wide, top + CURVE_HEIGHT + 17, SMALL), "hours. Drawn: this firing" + legend);
    y = top + CURVE_HEIGHT + 24;
  }

  private static List<float[]> points(
      List<CurvePoint> curve, double hours, double hottest, float[] box) {
    List<float[]> points = new ArrayList<>();
    for (CurvePoint point : curve) {
      points.add(
          new float[] {
            box[0] + box[2] * (float) (point.hours() / hours),
            box[1] + CURVE_HEIGHT * (float) (1 - point.celsius() / hottest)
          });
    }
    return points;
  }

  private static double last(List<CurvePoint> curve) {
    return curve.isEmpty() ? 0 : curve.get(curve.size() - 1).hours();
  }

  private static double hottest(List<CurvePoint> curve) {
    return curve.stream().mapToDouble(CurvePoint::celsius).max().orElse(1);
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

  private void clock() throws IOException {
    pen.bold(new At(MARGIN, y, 11), "The clock");
    int rows = (paper.clock().size() + 1) / 2;
    for (int i = 0; i < paper.clock().size(); i++) {
      KilnSheetPaper.Time time = paper.clock().get(i);
      float x = MARGIN + (i / rows) * width / 2;
      float at = y + 13 + (i % rows) * BODY * 1.45f;
      String words = time.what() + (time.present() ? " (be there)" : "");
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
