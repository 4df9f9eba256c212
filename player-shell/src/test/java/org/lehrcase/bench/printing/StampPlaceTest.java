package org.lehrcase.bench.printing;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.core.seal.ClearSource;

/** Where the stamp stands, measured in the drawn page: one dot is one point. */
class StampPlaceTest {
  private static final int DARK = 200;

  private static byte[] page(int rotation, float left, float bottom) throws Exception {
    try (PDDocument document = new PDDocument()) {
      PDPage page = new PDPage(new PDRectangle(600, 800));
      page.setCropBox(new PDRectangle(left, bottom, 400, 500));
      page.setRotation(rotation);
      document.addPage(page);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.save(out);
      return out.toByteArray();
    }
  }

  private static ClearSource clear(byte[] bytes) {
    return new ClearSource() {
      @Override
      public long sizeBytes() {
        return bytes.length;
      }

      @Override
      public int readAt(long position, ByteBuffer target) {
        if (position >= bytes.length) {
          return -1;
        }
        int length = Math.min(target.remaining(), bytes.length - (int) position);
        target.put(bytes, (int) position, length);
        return length;
      }

      @Override
      public void close() {}
    };
  }

  @ParameterizedTest(name = "turned {0} degrees, cut at {1}, {2}")
  @CsvSource({
    "0, 0, 0",
    "90, 0, 0",
    "180, 0, 0",
    "270, 0, 0",
    "-90, 0, 0",
    "450, 0, 0",
    "0, 100, 200",
    "90, 100, 200",
    "180, 100, 200",
    "270, 100, 200"
  })
  void itReadsUprightInTheLowerLeftCornerThatIsSeen(int rotation, float left, float bottom)
      throws Exception {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (Stamp stamp = Stamp.of(clear(page(rotation, left, bottom)), "Robin Invented")) {
      stamp.writeTo(out);
    }
    try (PDDocument document = Loader.loadPDF(out.toByteArray())) {
      BufferedImage drawn = new PDFRenderer(document).renderImage(0);
      boolean lying = Math.floorMod(rotation, 180) == 90;
      assertThat(drawn.getWidth()).isEqualTo(lying ? 500 : 400);
      int[] box = inked(drawn);
      assertThat(box[0]).as("from the left").isBetween(10, 16);
      assertThat(drawn.getHeight() - box[3]).as("from below").isBetween(8, 15);
      assertThat(box[2] - box[0]).as("as wide as its words").isBetween(30, 80);
      assertThat(box[3] - box[1]).as("one line high").isBetween(3, 10);
    }
  }

  /** Returns left, top, right and bottom of all that is not white. */
  private static int[] inked(BufferedImage drawn) {
    int[] box = {Integer.MAX_VALUE, Integer.MAX_VALUE, -1, -1};
    for (int y = 0; y < drawn.getHeight(); y++) {
      for (int x = 0; x < drawn.getWidth(); x++) {
        if ((drawn.getRGB(x, y) & 0xff) < DARK) {
          box[0] = Math.min(box[0], x);
          box[1] = Math.min(box[1], y);
          box[2] = Math.max(box[2], x);
          box[3] = Math.max(box[3], y);
        }
      }
    }
    return box;
  }
}
