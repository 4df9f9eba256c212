package org.lehrcase.bench.printing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.util.Matrix;

/** A picture on a page of A4, as large as fits, turned to lie as the picture lies. */
public final class PicturePage {
  private static final float MARGIN = 36;

  private PicturePage() {}

  /**
   * Lays out a picture.
   *
   * @param title its name
   * @param picture PNG or JPEG
   * @param stamp what stands in the margin
   * @return a PDF of one page
   * @throws IOException if it is no such picture
   */
  public static byte[] of(String title, byte[] picture, String stamp) throws IOException {
    try (PDDocument document = new PDDocument();
        ByteArrayOutputStream out = new ByteArrayOutputStream()) {
      document.getDocumentInformation().setTitle(title);
      PDImageXObject image = image(document, picture, title);
      PDRectangle sheet = PDRectangle.A4;
      if (image.getWidth() > image.getHeight()) {
        sheet = new PDRectangle(sheet.getHeight(), sheet.getWidth());
      }
      PDPage page = new PDPage(sheet);
      document.addPage(page);
      draw(document, page, image);
      Stamp.all(document, stamp);
      document.save(out);
      return out.toByteArray();
    }
  }

  /** Reads a picture into a document. */
  static PDImageXObject image(PDDocument document, byte[] picture, String title)
      throws IOException {
    Optional<FlatPng> flat = FlatPng.of(picture);
    if (flat.isPresent()) {
      return flat.get().in(document);
    }
    try {
      return PDImageXObject.createFromByteArray(document, picture, title);
    } catch (IllegalArgumentException e) {
      throw new IOException("this is no picture that can be printed", e);
    }
  }

  private static void draw(PDDocument document, PDPage page, PDImageXObject image)
      throws IOException {
    PDRectangle sheet = page.getMediaBox();
    float across = sheet.getWidth() - 2 * MARGIN;
    float up = sheet.getHeight() - 2 * MARGIN;
    float scale = Math.min(across / image.getWidth(), up / image.getHeight());
    float width = image.getWidth() * scale;
    float height = image.getHeight() * scale;
    try (PDPageContentStream out = new PDPageContentStream(document, page)) {
      out.drawImage(
          image,
          new Matrix(
              width,
              0,
              0,
              height,
              (sheet.getWidth() - width) / 2,
              (sheet.getHeight() - height) / 2));
    }
  }
}
