package org.lehrcase.desk.envelopes;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;

/** Draws the three sheets to print, one for each envelope. Made in memory. */
public final class EnvelopePages {
  private static final float TOP = 760;

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
      PDFont font = PrintedPage.font(document);
      for (int i = 0; i < envelopes.size(); i++) {
        PDPage page = new PDPage(PDRectangle.A4);
        document.addPage(page);
        try (PDPageContentStream drawing = new PDPageContentStream(document, page)) {
          PrintedPage.Sheet sheet = new PrintedPage.Sheet(drawing, font);
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

  private static float heading(PrintedPage.Sheet sheet, String title, String below)
      throws IOException {
    sheet.line(22, TOP, title);
    sheet.line(11, TOP - 24, below);
    return TOP - 90;
  }

  private static float code(PrintedPage.Sheet sheet, float top, List<String> lines)
      throws IOException {
    float y = top;
    for (int i = 0; i < lines.size(); i++) {
      sheet.line(20, y, (i + 1) + "  " + lines.get(i));
      y -= 40;
    }
    return y - 20;
  }

  private static void advice(PrintedPage.Sheet sheet, float top) throws IOException {
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

  private static String join(List<String> words) {
    return String.join(" ", words);
  }
}
