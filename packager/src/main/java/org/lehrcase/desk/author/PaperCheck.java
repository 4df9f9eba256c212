package org.lehrcase.desk.author;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;

/** Checks what is read or printed: PDF, Markdown, drawings and pictures. */
final class PaperCheck {
  private static final long HUGE_PIXELS = 40_000_000L;

  private final List<Finding> findings;
  private final Map<String, Integer> pages = new HashMap<>();

  PaperCheck(List<Finding> findings) {
    this.findings = findings;
  }

  void run(SourceAsset asset) {
    switch (asset.mediaType()) {
      case "application/pdf" ->
          pages.put(asset.place(), new PdfCheck(asset.place(), findings).pages(asset.file()));
      case "text/markdown" -> checkText(asset);
      case "image/svg+xml" -> new DrawingCheck(asset, findings).run();
      case "image/png", "image/jpeg" -> checkPicture(asset);
      default -> BoundedText.bytes(asset.file(), asset.place(), BoundedText.MAX_BYTES, findings);
    }
  }

  /** Returns how many pages a PDF has, 0 if it was not read. */
  int pages(SourceAsset asset) {
    return pages.getOrDefault(asset.place(), 0);
  }

  private void checkText(SourceAsset asset) {
    var bytes = BoundedText.bytes(asset.file(), asset.place(), BoundedText.MAX_BYTES, findings);
    if (bytes.isEmpty()) {
      return;
    }
    try {
      var text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes.get()));
      if (text.toString().isBlank()) {
        findings.add(Finding.doubt(asset.place(), "is empty", "write it or delete it"));
      }
    } catch (CharacterCodingException e) {
      findings.add(
          Finding.doubt(
              asset.place(),
              "is not written as UTF-8, so accents may come out wrong",
              "save it as UTF-8"));
    }
  }

  private void checkPicture(SourceAsset asset) {
    try (var in = ImageIO.createImageInputStream(asset.file().toFile())) {
      var readers = ImageIO.getImageReaders(in);
      if (!readers.hasNext()) {
        findings.add(
            Finding.error(asset.place(), "is not a picture", "export it again as PNG or JPEG"));
        return;
      }
      var reader = readers.next();
      try {
        reader.setInput(in, true, true);
        checkFormat(asset, "image/" + reader.getFormatName().toLowerCase(Locale.ROOT));
        checkPixels(asset, (long) reader.getWidth(0) * reader.getHeight(0));
      } finally {
        reader.dispose();
      }
    } catch (IOException e) {
      findings.add(
          Finding.error(asset.place(), "is a broken picture", "export it again as PNG or JPEG"));
    }
  }

  private void checkFormat(SourceAsset asset, String found) {
    if (!found.equals(asset.mediaType())) {
      findings.add(
          Finding.error(
              asset.place(),
              "holds " + found + ", but its name says " + asset.mediaType(),
              "give it the ending that fits"));
    }
  }

  private void checkPixels(SourceAsset asset, long pixels) {
    if (pixels > HUGE_PIXELS) {
      findings.add(
          Finding.doubt(
              asset.place(),
              "has " + pixels / 1_000_000 + " megapixels, slow on an old laptop",
              "export it smaller; 12 megapixels are plenty"));
    }
  }
}
