package org.lehrcase.desk.sticks;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.lehrcase.desk.sticks.LetterPen.Column;

/** The list of sticks on paper: pages of A4, a box to tick before each. */
public final class SentListPages {
  private static final float LEFT = 54;
  private static final float WIDTH = 488;
  private static final float TOP = 782;
  private static final float BOTTOM = 60;
  private static final float SIZE = 10;
  private static final float BOX = 9;
  private static final String TICK = "[ ] ";

  private SentListPages() {}

  /**
   * Draws the list.
   *
   * @param lines as {@link SentList#lines} gives them: a title, then the sticks
   * @return a PDF, its font inside
   * @throws IOException if drawing fails
   */
  public static byte[] draw(List<String> lines) throws IOException {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      document.getDocumentInformation().setTitle(lines.get(0));
      PDFont font = font(document);
      int next = 0;
      int page = 1;
      while (next < lines.size()) {
        next = page(document, font, lines, next, page++);
      }
      document.save(out);
      return out.toByteArray();
    }
  }

  /** Fills one page and returns the number of the line that comes after it. */
  private static int page(
      PDDocument document, PDFont font, List<String> lines, int first, int number)
      throws IOException {
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    try (PDPageContentStream drawing = new PDPageContentStream(document, page)) {
      LetterPen pen = new LetterPen(drawing, font);
      float y = TOP;
      int line = first;
      while (line < lines.size() && y > BOTTOM) {
        y = line(pen, lines.get(line), y, line == 0);
        line++;
      }
      pen.word(SIZE - 2, LetterPen.SEA, LEFT, BOTTOM - 24, "page " + number);
      return line;
    }
  }

  private static float line(LetterPen pen, String text, float y, boolean title) throws IOException {
    if (title) {
      return pen.words(SIZE * 1.6f, new Column(LEFT, y, WIDTH), text) - SIZE;
    }
    if (!text.startsWith(TICK)) {
      return pen.words(SIZE, new Column(LEFT, y, WIDTH), text) - SIZE / 2;
    }
    pen.framed(LetterPen.INK, LEFT, y - 1, BOX, BOX);
    Column beside = new Column(LEFT + BOX + 9, y, WIDTH - BOX - 9);
    return pen.words(SIZE, beside, text.substring(TICK.length())) - SIZE / 2;
  }

  private static PDFont font(PDDocument document) throws IOException {
    try (InputStream in = SentListPages.class.getResourceAsStream(BuyerLetter.FONT)) {
      if (in == null) {
        throw new IllegalStateException("this build lacks " + BuyerLetter.FONT);
      }
      return PDType0Font.load(document, in);
    }
  }
}
