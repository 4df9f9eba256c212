package org.lehrcase.bench.printing;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.io.IOUtils;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.util.Matrix;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.seal.ClearSource;

/**
 * A PDF with the buyer's name and license number small in the lower margin of every page, in a font
 * that is embedded so that every name prints. The size of the pages is not changed.
 */
public final class Stamp implements AutoCloseable {
  static final String FONT = "DejaVuSans.ttf";
  private static final float SIZE_POINTS = 6.5f;
  private static final float MARGIN_POINTS = 12;
  private static final float GREY = 0.45f;

  private final PDDocument document;

  private Stamp(PDDocument document) {
    this.document = document;
  }

  /**
   * Reads a PDF and stamps it.
   *
   * @param pdf the clear bytes; they stay open until the stamp is closed
   * @param words what stands in the margin
   * @return the stamped paper; the caller closes it
   * @throws IOException if it is no PDF, is locked with a password, or the medium fails
   */
  public static Stamp of(ClearSource pdf, String words) throws IOException {
    PDDocument document =
        Loader.loadPDF(new ClearPdfInput(pdf), IOUtils.createMemoryOnlyStreamCache());
    boolean whole = false;
    try {
      all(document, words);
      whole = true;
      return new Stamp(document);
    } finally {
      if (!whole) {
        document.close();
      }
    }
  }

  /** Writes the words into the margin of every page. */
  static void all(PDDocument document, String words) throws IOException {
    document.setAllSecurityToBeRemoved(true);
    all(document, words, font(document));
  }

  /** Writes the words in a font that the document has already. */
  static void all(PDDocument document, String words, PDFont font) throws IOException {
    String printable = printable(words, font);
    for (PDPage page : document.getPages()) {
      stamp(document, page, font, printable);
    }
  }

  /** Loads the font of our papers into a document, which embeds what is used of it. */
  static PDFont font(PDDocument document) throws IOException {
    try (@Nullable InputStream font = Stamp.class.getResourceAsStream(FONT)) {
      if (font == null) {
        throw new IOException("the program is incomplete: " + FONT + " is missing");
      }
      return PDType0Font.load(document, font, true);
    }
  }

  /** Replaces what the font has no glyph for, so that a rare name never stops the printing. */
  static String printable(String words, PDFont font) {
    StringBuilder printable = new StringBuilder();
    words
        .codePoints()
        .forEach(
            point -> {
              String one = Character.toString(point);
              try {
                font.encode(one);
                printable.append(one);
              } catch (IOException | IllegalArgumentException e) {
                printable.append('?');
              }
            });
    return printable.toString();
  }

  /** Written into each page itself: a form would lose the embedded font. */
  private static void stamp(PDDocument document, PDPage page, PDFont font, String words)
      throws IOException {
    PDRectangle box = page.getCropBox();
    try (PDPageContentStream out =
        new PDPageContentStream(document, page, AppendMode.APPEND, true, true)) {
      out.beginText();
      out.setFont(font, SIZE_POINTS);
      out.setNonStrokingColor(GREY, GREY, GREY);
      out.setTextMatrix(place(page.getRotation(), box));
      out.showText(words);
      out.endText();
    }
  }

  /** The lower left corner as the reader sees it, on pages that are turned too. */
  private static Matrix place(int rotation, PDRectangle box) {
    float left = box.getLowerLeftX() + MARGIN_POINTS;
    float right = box.getUpperRightX() - MARGIN_POINTS;
    float bottom = box.getLowerLeftY() + MARGIN_POINTS;
    float top = box.getUpperRightY() - MARGIN_POINTS;
    return switch (Math.floorMod(rotation, 360)) {
      case 90 -> new Matrix(0, 1, -1, 0, right, bottom);
      case 180 -> new Matrix(-1, 0, 0, -1, right, top);
      case 270 -> new Matrix(0, -1, 1, 0, left, top);
      default -> new Matrix(1, 0, 0, 1, left, bottom);
    };
  }

  /**
   * Returns the number of pages.
   *
   * @return pages
   */
  public int pages() {
    return document.getNumberOfPages();
  }

  /**
   * Writes the stamped paper.
   *
   * @param out where it goes; not closed
   * @throws IOException if it cannot be written
   */
  public void writeTo(OutputStream out) throws IOException {
    document.save(out);
  }

  @Override
  public void close() throws IOException {
    document.close();
  }
}
