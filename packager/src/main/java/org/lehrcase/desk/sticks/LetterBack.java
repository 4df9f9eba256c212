package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.lehrcase.bench.help.QrSquares;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.CodeText;
import org.lehrcase.core.message.TypedText;
import org.lehrcase.desk.sticks.LetterPen.Column;

/**
 * The back of a buyer's letter: license and key letters once more, as codes to photograph and as
 * lines to type, for the day on which the stick cannot be read.
 */
final class LetterBack {
  private static final float LEFT = 54;
  private static final float WIDTH = 488;
  private static final float TOP = 782;
  private static final float BOTTOM = 54;
  private static final float BODY = 9.5f;
  private static final float LINE = 8.5f;
  private static final float LEADING = 12;
  private static final int ACROSS = 3;
  private static final float CELL = WIDTH / ACROSS;
  private static final float CODE = 146;
  private static final float CAPTION = 14;
  private static final int QUIET = 4; // light squares around a code (ISO/IEC 18004, 6.3.8)
  private static final String WHAT =
      "What is on the stick as license.txt and letter.txt, once more. Read all codes of a paper with"
          + " a telephone, and paste their texts on the start page, a code a line; or type the lines"
          + " there, the first with its name too. The page names a line that was misread. None of it"
          + " opens anything but the laptop whose card you sent.";

  private final LetterPen pen;
  private float y = TOP;

  private LetterBack(LetterPen pen) {
    this.pen = pen;
  }

  /** One code and what stands below it. */
  private record Code(String caption, String text) {}

  /**
   * Adds the page, if there is something to stand on it.
   *
   * @param document the letter
   * @param font its font
   * @param messages what to show; what does not fit on the page is left out, lines first
   */
  static void add(PDDocument document, PDFont font, List<Armor.Block> messages) throws IOException {
    if (messages.isEmpty()) {
      return;
    }
    PDPage page = new PDPage(PDRectangle.A4);
    document.addPage(page);
    try (PDPageContentStream drawing = new PDPageContentStream(document, page)) {
      LetterBack back = new LetterBack(new LetterPen(drawing, font));
      back.head();
      back.codes(messages);
      for (Armor.Block message : messages) {
        back.lines(message);
      }
    }
  }

  private void head() throws IOException {
    pen.word(12.5f, LetterPen.SEA, LEFT, y, "If the stick is lost or cannot be read");
    y = pen.words(BODY, new Column(LEFT, y - 18, WIDTH), WHAT) - 4;
  }

  private static String name(ArmorKind kind) {
    return kind == ArmorKind.LICENSE ? "license" : "key letter";
  }

  private void codes(List<Armor.Block> messages) throws IOException {
    List<Code> codes = new ArrayList<>();
    for (Armor.Block message : messages) {
      List<String> texts = CodeText.write(message.kind(), message.bytes());
      for (int i = 0; i < texts.size(); i++) {
        String place = texts.size() == 1 ? "" : ", code " + (i + 1) + " of " + texts.size();
        codes.add(new Code(name(message.kind()) + place, texts.get(i)));
      }
    }
    for (int first = 0; first < codes.size(); first += ACROSS) {
      if (y - CODE - CAPTION < BOTTOM) {
        return;
      }
      y -= CODE;
      for (int i = first; i < Math.min(codes.size(), first + ACROSS); i++) {
        code(codes.get(i), LEFT + (i - first) * CELL);
      }
      y -= CAPTION + 6;
    }
  }

  private void code(Code code, float x) throws IOException {
    List<String> rows = QrSquares.rows(code.text());
    float square = CODE / (rows.size() + 2 * QUIET);
    pen.squares(rows, x + QUIET * square, y + CODE - QUIET * square, square);
    pen.word(BODY - 1, LetterPen.INK, x + QUIET * square, y - 6, code.caption());
  }

  /** The lines of a message in columns, if they fit. */
  private void lines(Armor.Block message) throws IOException {
    List<String> lines = TypedText.write(message.kind(), message.bytes());
    int rows = (lines.size() + ACROSS - 2) / ACROSS;
    if (y - (rows + 2) * LEADING < BOTTOM) {
      return;
    }
    y -= LEADING;
    pen.word(LINE + 0.5f, LetterPen.SEA, LEFT, y, lines.get(0));
    for (int i = 1; i < lines.size(); i++) {
      int column = (i - 1) / rows;
      float x = LEFT + column * CELL;
      float base = y - ((i - 1) % rows + 1) * LEADING;
      pen.word(LINE, LetterPen.INK, x, base, i + ". " + lines.get(i));
    }
    y -= (rows + 1) * LEADING;
  }
}
