package org.lehrcase.bench.printing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.ImageIO;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** See-through pictures on white, compared with what the Java library makes of them. */
class FlatPngTest {
  private static BufferedImage drawn(int space, int kind) {
    ColorModel model =
        new ComponentColorModel(
            ColorSpace.getInstance(space), true, false, Transparency.TRANSLUCENT, kind);
    WritableRaster raster = model.createCompatibleWritableRaster(61, 43);
    Random random = new Random(5);
    int most = kind == DataBuffer.TYPE_USHORT ? 0xffff : 0xff;
    for (int y = 0; y < raster.getHeight(); y++) {
      for (int x = 0; x < raster.getWidth(); x++) {
        for (int band = 0; band < raster.getNumBands(); band++) {
          boolean smooth = y < 20; // so that the writer chooses other filters for some rows
          int value = smooth ? (x * 4 + y) % 256 * (most / 255) : random.nextInt(most + 1);
          raster.setSample(x, y, band, value);
        }
      }
    }
    return new BufferedImage(model, raster, false, null);
  }

  private static byte[] png(BufferedImage image) throws IOException {
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(image, "png", png);
    return png.toByteArray();
  }

  private static int off(int one, int other) {
    int most = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      most = Math.max(most, Math.abs((one >> shift & 0xff) - (other >> shift & 0xff)));
    }
    return most;
  }

  @ParameterizedTest(name = "color space {0}, {1}")
  @CsvSource({"1000, 0", "1000, 1"}) // sRGB with samples of 8 and of 16 bits
  void eachDotIsMixedWithWhiteByItsOpacity(int space, int kind) throws Exception {
    BufferedImage source = drawn(space, kind);
    BufferedImage white = new BufferedImage(61, 43, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = white.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, 61, 43);
    pen.drawImage(source, 0, 0, null);
    pen.dispose();
    try (PDDocument document = new PDDocument()) {
      BufferedImage flat = FlatPng.of(png(source)).orElseThrow().in(document).getImage();
      for (int y = 0; y < 43; y++) {
        for (int x = 0; x < 61; x++) {
          assertThat(off(flat.getRGB(x, y), white.getRGB(x, y))).isLessThanOrEqualTo(2);
        }
      }
    }
  }

  @Test
  void greyWithOpacityStaysGrey() throws Exception {
    BufferedImage source = drawn(ColorSpace.CS_GRAY, DataBuffer.TYPE_BYTE);
    try (PDDocument document = new PDDocument()) {
      BufferedImage flat = FlatPng.of(png(source)).orElseThrow().in(document).getImage();
      int grey = source.getRaster().getSample(7, 30, 0);
      int opacity = source.getRaster().getSample(7, 30, 1);
      int expected = Math.round((grey * opacity + 255f * (255 - opacity)) / 255);
      assertThat(flat.getRGB(7, 30) & 0xff).isBetween(expected - 1, expected + 1);
    }
  }

  @Test
  void anOpaquePictureIsLeftToTheLibrary() throws Exception {
    assertThat(FlatPng.of(png(new BufferedImage(4, 4, BufferedImage.TYPE_INT_RGB)))).isEmpty();
    assertThat(FlatPng.of(new byte[] {1, 2, 3})).isEmpty();
  }

  @Test
  void aPictureThatIsCutOffIsSaid() throws Exception {
    byte[] whole = png(drawn(ColorSpace.CS_sRGB, DataBuffer.TYPE_BYTE));
    byte[] cut = Arrays.copyOf(whole, whole.length / 2);
    try (PDDocument document = new PDDocument()) {
      FlatPng flat = FlatPng.of(cut).orElseThrow();
      assertThatThrownBy(() -> flat.in(document)).isInstanceOf(IOException.class);
    }
  }
}
