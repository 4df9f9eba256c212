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
import org.lehrcase.core.message.Armor;
import org.lehrcase.desk.sticks.LetterPen.Column;

/**
 * The sheet of paper that goes into the envelope with a stick: a page of A4, made in memory, with
 * license and key letters on its back.
 */
public final class BuyerLetter {
  static final String FONT = "/org/lehrcase/bench/printing/DejaVuSans.ttf";
  private static final float LEFT = 54;
  private static final float WIDTH = 488;
  private static final float TOP = 782;
  private static final float BODY = 9.5f;
  private static final float GAP = 14;
  private static final int SHOWN_COURSES = 3;

  private BuyerLetter() {}

  /**
   * Draws the letter.
   *
   * @param words what the buyer is told; long names are cut
   * @param messages license and key letters for the back
   * @return a PDF of one page, or of two if there are messages; its font inside
   * @throws IOException if drawing fails
   */
  public static byte[] draw(Welcome words, List<Armor.Block> messages) throws IOException {
    Welcome welcome = words.forPaper();
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      document.getDocumentInformation().setTitle("Your course");
      PDFont font = font(document);
      PDPage page = new PDPage(PDRectangle.A4);
      document.addPage(page);
      try (PDPageContentStream drawing = new PDPageContentStream(document, page)) {
        LetterPen pen = new LetterPen(drawing, font);
        float y = head(pen, welcome);
        y = steps(pen, welcome, y);
        y = warnings(pen, y);
        foot(pen, welcome, y);
      }
      LetterBack.add(document, font, messages);
      document.save(out);
      return out.toByteArray();
    }
  }

  private static float head(LetterPen pen, Welcome welcome) throws IOException {
    String title = welcome.buyer().map(name -> "For " + name).orElse("Your course");
    float y = pen.words(19, new Column(LEFT, TOP, WIDTH), title, 2) + 2;
    y =
        pen.words(
            BODY, new Column(LEFT, y, WIDTH), "On this stick, from " + welcome.shop() + ":", 2);
    List<String> courses = welcome.courses();
    for (int i = 0; i < Math.min(SHOWN_COURSES, courses.size()); i++) {
      y = pen.words(BODY + 1, new Column(LEFT + 12, y, WIDTH - 12), courses.get(i), 2);
    }
    if (courses.size() > SHOWN_COURSES) {
      String more = "and " + (courses.size() - SHOWN_COURSES) + " more";
      y = pen.words(BODY, new Column(LEFT + 12, y, WIDTH - 12), more);
    }
    return y - GAP;
  }

  private static float steps(LetterPen pen, Welcome welcome, float top) throws IOException {
    LetterPictures pictures = new LetterPictures(pen);
    float y = top;
    int number = 0;
    for (Welcome.Paragraph step : welcome.steps()) {
      pictures.step(number, LEFT, y - LetterPictures.HEIGHT + 12);
      Column column =
          new Column(LEFT + LetterPictures.WIDTH + 20, y, WIDTH - LetterPictures.WIDTH - 20);
      pen.word(12.5f, LetterPen.SEA, column.x(), y, ++number + "  " + step.heading());
      float below = pen.words(BODY, column.below(y - 16), step.text(), 7);
      y = Math.min(below, y - LetterPictures.HEIGHT) - GAP;
    }
    return y;
  }

  private static float warnings(LetterPen pen, float top) throws IOException {
    pen.word(12.5f, LetterPen.SEA, LEFT, top, "What your system may say at the first start");
    LetterPictures pictures = new LetterPictures(pen);
    float each = WIDTH / 3;
    float lowest = top;
    float y = top - 12 - LetterPictures.HEIGHT;
    int number = 0;
    for (Welcome.Paragraph warning : Welcome.warnings()) {
      float x = LEFT + number * each;
      pictures.warning(number++, x, y);
      Column column = new Column(x, y - 14, each - 16);
      float below = pen.words(BODY + 0.5f, column, warning.heading());
      lowest = Math.min(lowest, pen.words(BODY - 1, column.below(below), warning.text()));
    }
    return lowest - GAP;
  }

  private static void foot(LetterPen pen, Welcome welcome, float top) throws IOException {
    Column whole = new Column(LEFT, top, WIDTH);
    pen.word(12.5f, LetterPen.SEA, LEFT, top, "Whom to write to");
    float y = pen.words(BODY, whole.below(top - 16), welcome.help(), 4) - GAP / 2;
    pen.word(12.5f, LetterPen.SEA, LEFT, y, "Take care");
    y -= 16;
    for (String caution : welcome.cautions()) {
      pen.filled(LetterPen.SEA, LEFT, y + 2, 4, 4);
      y = pen.words(BODY, new Column(LEFT + 12, y, WIDTH - 12), caution);
    }
  }

  private static PDFont font(PDDocument document) throws IOException {
    try (InputStream in = BuyerLetter.class.getResourceAsStream(FONT)) {
      if (in == null) {
        throw new IllegalStateException("this build lacks " + FONT);
      }
      return PDType0Font.load(document, in);
    }
  }
}
