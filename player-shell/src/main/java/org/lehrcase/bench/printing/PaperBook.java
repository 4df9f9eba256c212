package org.lehrcase.bench.printing;

import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.IOException;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.interactive.viewerpreferences.PDViewerPreferences;
import org.jspecify.annotations.Nullable;

/**
 * A PDF that grows page by page, with one embedded font. It asks viewers to print it at its true
 * size; not every viewer listens, so true-size papers carry rulers.
 */
public final class PaperBook implements Closeable {
  private final PDDocument document = new PDDocument();
  private final PDFont font;
  private @Nullable PDPageContentStream open;

  /**
   * Begins a paper without pages.
   *
   * @param title its name
   * @throws IOException if the program is incomplete
   */
  public PaperBook(String title) throws IOException {
    document.getDocumentInformation().setTitle(title);
    PDViewerPreferences wishes = new PDViewerPreferences(new COSDictionary());
    wishes.setPrintScaling(PDViewerPreferences.PRINT_SCALING.None);
    document.getDocumentCatalog().setViewerPreferences(wishes);
    font = Stamp.font(document);
  }

  /** Returns the font of all words. */
  public PDFont font() {
    return font;
  }

  /** Returns the document, for pictures that are put on its pages. */
  public PDDocument document() {
    return document;
  }

  /** Returns how many pages there are. */
  public int pages() {
    return document.getNumberOfPages();
  }

  /**
   * Ends the page before and begins another.
   *
   * @param size its size in points
   * @return what draws on it, until the next page is begun
   * @throws IOException if it cannot be drawn
   */
  public PDPageContentStream page(PDRectangle size) throws IOException {
    end();
    PDPage page = new PDPage(size);
    document.addPage(page);
    PDPageContentStream next = new PDPageContentStream(document, page);
    open = next;
    return next;
  }

  private void end() throws IOException {
    PDPageContentStream before = open;
    open = null;
    if (before != null) {
      before.close();
    }
  }

  /**
   * Ends the paper.
   *
   * @param words what stands small in the margin of every page; blank for nothing
   * @return the PDF
   * @throws IOException if it cannot be written
   */
  public byte[] stamped(String words) throws IOException {
    end();
    if (!words.isBlank()) {
      Stamp.all(document, words, font);
    }
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    document.save(bytes);
    return bytes.toByteArray();
  }

  @Override
  public void close() throws IOException {
    end();
    document.close();
  }
}
