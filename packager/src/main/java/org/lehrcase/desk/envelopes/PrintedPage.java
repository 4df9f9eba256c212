package org.lehrcase.desk.envelopes;

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

/** Lines of text on A4 sheets, made in memory. */
public final class PrintedPage {
  private static final float LEFT = 60;
  private static final float TOP = 770;
  private static final float STEP = 19;
  private static final String FONT = "/org/lehrcase/bench/printing/DejaVuSans.ttf";

  private PrintedPage() {}

  /**
   * Draws one sheet.
   *
   * @param title what it is
   * @param below whose it is
   * @param lines the text, at most 36 lines of about 95 characters
   * @return a PDF of one A4 sheet
   * @throws IOException if drawing fails
   */
  public static byte[] draw(String title, String below, List<String> lines) throws IOException {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      document.getDocumentInformation().setTitle(title);
      PDFont font = font(document);
      PDPage page = new PDPage(PDRectangle.A4);
      document.addPage(page);
      try (PDPageContentStream drawing = new PDPageContentStream(document, page)) {
        Sheet sheet = new Sheet(drawing, font);
        sheet.line(16, TOP, title);
        sheet.line(9, TOP - STEP, below);
        float y = TOP - 3 * STEP;
        for (String line : lines) {
          sheet.line(10, y, line);
          y -= STEP;
        }
      }
      document.save(out);
      return out.toByteArray();
    }
  }

  static PDFont font(PDDocument document) throws IOException {
    try (InputStream in = PrintedPage.class.getResourceAsStream(FONT)) {
      if (in == null) {
        throw new IllegalStateException("this build lacks " + FONT);
      }
      return PDType0Font.load(document, in);
    }
  }

  /** A page that text is written on, line by line. */
  record Sheet(PDPageContentStream drawing, PDFont font) {
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
}
