package org.lehrcase.bench.printing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** A PNG template on paper: rendered, and measured in dots, ten to the millimetre. */
class TemplatePagesTest {
  private static final String WHO = "Zo\u00eb Invented \u00b7 license 01234567";
  private static final int DOTS_PER_MM = 10;
  private static final int AFTER_HEADER =
      33; // signature and IHDR (PNG specification, 5 and 11.2.2)

  /** White, with black squares of side/20 in its upper left and lower right corners. */
  private static byte[] picture(int wide, int high) throws IOException {
    BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = image.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, wide, high);
    pen.setColor(Color.BLACK);
    int side = wide / 20;
    pen.fillRect(0, 0, side, side);
    pen.fillRect(wide - side, high - side, side, side);
    pen.dispose();
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(image, "png", png);
    return png.toByteArray();
  }

  private static byte[] stating(byte[] png, int perMetreX, int perMetreY, int unit) {
    ByteBuffer body = ByteBuffer.allocate(13);
    body.put("pHYs".getBytes(StandardCharsets.US_ASCII));
    body.putInt(perMetreX).putInt(perMetreY).put((byte) unit);
    CRC32 sum = new CRC32();
    sum.update(body.array());
    return ByteBuffer.allocate(png.length + 21)
        .put(png, 0, AFTER_HEADER)
        .putInt(9)
        .put(body.array())
        .putInt((int) sum.getValue())
        .put(png, AFTER_HEADER, png.length - AFTER_HEADER)
        .array();
  }

  private static BufferedImage page(byte[] pdf, int number) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFRenderer(document).renderImageWithDPI(number, 25.4f * DOTS_PER_MM);
    }
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  private static int pages(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return document.getNumberOfPages();
    }
  }

  private static boolean isBlack(BufferedImage page, double xMm, double yMm) {
    int dot = page.getRGB((int) (xMm * DOTS_PER_MM), (int) (yMm * DOTS_PER_MM));
    return (dot & 0xff) < 40;
  }

  /** The length of the dark run to the right of a place that is dark. */
  private static double darkMm(BufferedImage page, double xMm, double yMm) {
    double x = xMm;
    while (isBlack(page, x, yMm)) {
      x += 1.0 / DOTS_PER_MM;
    }
    return x - xMm;
  }

  /** From the mark of 0 to that of 100; below 3.5 mm only the tens have their marks. */
  private static double rulerMm(BufferedImage page) {
    double y = (double) page.getHeight() / DOTS_PER_MM - 25;
    return darkest(page, 105, y) - darkest(page, 5, y);
  }

  private static double darkest(BufferedImage page, int fromMm, double yMm) {
    int found = fromMm * DOTS_PER_MM;
    for (int x = found; x < (fromMm + 9) * DOTS_PER_MM; x++) {
      int y = (int) (yMm * DOTS_PER_MM);
      if ((page.getRGB(x, y) & 0xff) < (page.getRGB(found, y) & 0xff)) {
        found = x;
      }
    }
    return (double) found / DOTS_PER_MM;
  }

  @Test
  void whatTheFileStatesIsMeasuredOnThePaper() throws Exception {
    // 2,000 dots at 20,000 a metre are 100 mm; the squares are 5 mm
    byte[] pdf = TemplatePages.of("Leaf", stating(picture(2000, 3000), 20_000, 20_000, 1), WHO);
    assertThat(pages(pdf)).isEqualTo(1);
    BufferedImage paper = page(pdf, 0);
    assertThat(darkMm(paper, 10.2, 12)).isCloseTo(4.8, within(0.15));
    assertThat(isBlack(paper, 10 + 99, 10 + 149)).isTrue();
    assertThat(isBlack(paper, 10 + 94, 10 + 149)).isFalse();
    assertThat(isBlack(paper, 10 + 101, 10 + 149)).isFalse();
    assertThat(text(pdf)).contains("Leaf, 100.0 \u00d7 150.0 mm", WHO).doesNotContain("NO SIZE");
  }

  @Test
  void dotsThatAreNotSquareKeepBothSides() throws Exception {
    byte[] pdf = TemplatePages.of("Leaf", stating(picture(2000, 2000), 20_000, 10_000, 1), WHO);
    assertThat(text(pdf)).contains("100.0 \u00d7 200.0 mm");
    assertThat(isBlack(page(pdf, 0), 10 + 99, 10 + 199)).isTrue();
  }

  @Test
  void aLargerOneGoesOverSheetsThatOverlapByTenMillimetres() throws Exception {
    // 400 x 300 mm: an upright sheet holds 190 x 253, a lying one 277 x 166, so two by two lying
    byte[] pdf = TemplatePages.of("Reef", stating(picture(4000, 3000), 10_000, 10_000, 1), WHO);
    assertThat(pages(pdf)).isEqualTo(4);
    assertThat(text(pdf)).contains("Sheet 4 of 4: row 2, column 2");
    BufferedImage last = page(pdf, 3);
    // the second column begins at 267, the second row at 156: 133 x 144 mm are left
    assertThat(isBlack(last, 10 + 132, 10 + 143)).isTrue();
    assertThat(isBlack(last, 10 + 112, 10 + 143)).isFalse();
    assertThat(isBlack(last, 10 + 134, 10 + 143)).isFalse();
  }

  @Test
  void theRulerIsAHundredMillimetresLong() throws Exception {
    byte[] pdf = TemplatePages.of("Reef", stating(picture(4000, 3000), 10_000, 10_000, 1), WHO);
    for (int number = 0; number < pages(pdf); number++) {
      assertThat(rulerMm(page(pdf, number))).isCloseTo(100, within(0.15));
    }
  }

  @Test
  void whereNoSizeIsStatedEverySheetSaysSo() throws Exception {
    byte[] bare = picture(400, 400);
    for (byte[] png : new byte[][] {bare, stating(bare, 3, 2, 0), stating(bare, 0, 0, 1)}) {
      assertThat(text(TemplatePages.of("Leaf", png, WHO)))
          .contains("THE FILE STATES NO SIZE", "105.8 \u00d7 105.8 mm");
    }
  }

  @Test
  void aTemplateAsLargeAsThePaperFillsItAndTheRulerFollows() throws Exception {
    byte[] pdf = TemplatePages.of("Whole", stating(picture(2100, 2970), 10_000, 10_000, 1), WHO);
    assertThat(pages(pdf)).isEqualTo(2);
    assertThat(isBlack(page(pdf, 0), 1, 1)).isTrue();
    assertThat(rulerMm(page(pdf, 1))).isCloseTo(100, within(0.15));
  }

  @Test
  void aSizeThatCannotBeMeantIsFittedAndSaid() throws Exception {
    byte[] pdf = TemplatePages.of("Leaf", stating(picture(400, 400), 1, 1, 1), WHO);
    assertThat(pages(pdf)).isEqualTo(1);
    assertThat(text(pdf)).contains("NOT true size: the file states 400000 \u00d7 400000 mm");
  }

  @Test
  void aListOfChunksThatIsNonsenseStatesNothing() throws Exception {
    byte[] png = picture(40, 40);
    ByteBuffer.wrap(png).putInt(AFTER_HEADER, -1); // a chunk of 4 GB
    assertThat(PixelDensity.of(png)).isEmpty();
    assertThat(PixelDensity.of(new byte[] {1, 2, 3})).isEmpty();
    assertThat(PixelDensity.of(Arrays.copyOf(stating(png, 9, 9, 1), 45))).isEmpty();
  }
}
