package org.lehrcase.bench.printing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.lehrcase.bench.fixture.TinyPdf;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

class StampTest {
  private static ClearSource clear(byte[] bytes, int damagedFrom) {
    return new ClearSource() {
      @Override
      public long sizeBytes() {
        return bytes.length;
      }

      @Override
      public int readAt(long position, ByteBuffer target) throws VaultException {
        if (position >= bytes.length) {
          return -1;
        }
        if (position >= damagedFrom) {
          throw new VaultException.Tampered("a part does not check out");
        }
        int length = Math.min(target.remaining(), bytes.length - (int) position);
        target.put(bytes, (int) position, length);
        return length;
      }

      @Override
      public void close() {}
    };
  }

  private static byte[] stamped(byte[] pdf, String words) throws IOException {
    try (Stamp stamp = Stamp.of(clear(pdf, Integer.MAX_VALUE), words)) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      stamp.writeTo(out);
      return out.toByteArray();
    }
  }

  @Test
  void everyPageCarriesTheNameInAnEmbeddedFontAndKeepsItsSize() throws Exception {
    byte[] stamped = stamped(TinyPdf.pages(3), "Zoë Łucja Ωmega · license 0a1b2c3d");
    try (PDDocument document = Loader.loadPDF(stamped)) {
      assertThat(document.getNumberOfPages()).isEqualTo(3);
      for (int page = 1; page <= 3; page++) {
        PDFTextStripper text = new PDFTextStripper();
        text.setStartPage(page);
        text.setEndPage(page);
        assertThat(text.getText(document)).contains("Zoë Łucja Ωmega · license 0a1b2c3d");
        var resources = document.getPage(page - 1).getResources();
        for (var font : resources.getFontNames()) {
          assertThat(resources.getFont(font).isEmbedded()).isTrue();
        }
        assertThat(document.getPage(page - 1).getMediaBox().getWidth()).isBetween(595f, 596f);
      }
    }
  }

  @Test
  void aNameThatTheFontCannotShowDoesNotStopThePrinting() throws Exception {
    byte[] stamped = stamped(TinyPdf.pages(1), "\ud83d\udc20 fish 漢");
    try (PDDocument document = Loader.loadPDF(stamped)) {
      assertThat(new PDFTextStripper().getText(document)).contains("? fish ?");
    }
  }

  @Test
  void whatIsNoPdfIsRefused() {
    assertThatThrownBy(() -> stamped(new byte[] {1, 2, 3}, "x")).isInstanceOf(IOException.class);
  }

  @Test
  void aDamagedPaperIsNotSaved() throws Exception {
    byte[] pdf = TinyPdf.pages(2);
    assertThatThrownBy(() -> Stamp.of(clear(pdf, pdf.length / 2), "x"))
        .isInstanceOf(IOException.class);
  }
}
