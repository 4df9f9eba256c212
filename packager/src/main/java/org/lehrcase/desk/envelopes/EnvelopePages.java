package org.lehrcase.desk.envelopes;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.time.LocalDate;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** Draws the three sheets to print, one for each envelope. Made in memory. */
public final class EnvelopePages {
  private static final float LEFT = 60;
  private static final float TOP = 760;
  private static final String FONT = "/org/lehrcase/bench/printing/DejaVuSans.ttf";

  private EnvelopePages() {}

  /**
   * Draws the sheets.
   *
   * @param shop whose envelopes these are
   * @param day when they were made
   * @param words five words of the hash of the root key, by which benches show the shop
   * @param envelopes the four lines of each envelope
   * @return a PDF of A4 sheets
   * @throws IOException if drawing fails
   */
  public static byte[] draw(
      String shop, LocalDate day, List<String> words, List<List<String>> envelopes)
      throws IOException {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      document.getDocumentInformation().setTitle("Spare-key envelopes");
      PDFont font = font(document);
      for (int i = 0; i < envelopes.size(); i++) {
        PDPage page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        try (PDPageContentStream drawing = new PDPageContentStream(document, page)) {
          Sheet sheet = new Sheet(drawing, font);
          String title = "Spare-key envelope " + (i + 1) + " of " + envelopes.size();
          float y = heading(sheet, title, shop + ", " + day + ", known by: " + join(words));
          y = code(sheet, y, envelopes.get(i));
          advice(sheet, y);
        }
      }
      document.save(out);
      return out.toByteArray();
    }
  }

  private static float heading(Sheet sheet, String title, String below) throws IOException {
    sheet.line(22, TOP, title);
    sheet.line(11, TOP - 24, below);
    return TOP - 90;
  }

  private static float code(Sheet sheet, float top, List<String> lines) throws IOException {
    float y = top;
    for (int i = 0; i < lines.size(); i++) {
      sheet.line(20, y, (i + 1) + "  " + lines.get(i));
      y -= 40;
    }
    return y - 20;
  }

  private static void advice(Sheet sheet, float top) throws IOException {
    List<String> text =
        List.of(
            "Any two of the three envelopes, with any copy of your editions, rebuild your desk",
            "when its computer is lost. One alone tells nothing.",
            "",
            "The secret on these sheets exists nowhere else: not in the desk, not in a backup.",
            "If two envelopes are lost, a lost desk can never be rebuilt.",
            "",
            "1. Print the three sheets on paper, by cable rather than by mail.",
            "2. Put each in its own envelope and keep the envelopes in three places,",
            "    one of them with the person who will look after your course one day.",
            "3. Delete the file and empty the bin.",
            "",
            "To type a line: capital or small letters, with or without spaces. The last two",
            "characters check the line. There is no letter O, I, L or U.");
    float y = top;
    for (String one : text) {
      sheet.line(11, y, one);
      y -= 16;
    }
  }

  private static PDFont font(PDDocument document) throws IOException {
    try (InputStream in = EnvelopePages.class.getResourceAsStream(FONT)) {
      if (in == null) {
        throw new IllegalStateException("this build lacks " + FONT);
      }
      return PDType0Font.load(document, in);
    }
  }

  /** A page that text is written on, line by line. */
  private record Sheet(PDPageContentStream drawing, PDFont font) {
    void line(float size, float y, String text) throws IOException {
      drawing.beginText();
      drawing.setFont(font, size);
      drawing.newLineAtOffset(LEFT, y);
      drawing.showText(printable(text));
      drawing.endText();
    }

    /** Replaces what the font cannot draw; the sheet's meaning is in the code lines. */
    private String printable(String text) throws IOException {
      StringBuilder out = new StringBuilder();
      for (int point : text.codePoints().toArray()) {
        String one = Character.toString(point);
        out.append(drawable(one) ? one : "?");
      }
      return out.toString();
    }

    private boolean drawable(String one) throws IOException {
      try {
        return font.encode(one).length > 0;
      } catch (IllegalArgumentException e) {
        return false; // the font has no such letter
      }
    }
  }

  private static String join(List<String> words) {
    return String.join(" ", words);
  }
}
