package org.lehrcase.bench.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Objects;
import java.util.SplittableRandom;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PictureDecoderTest {
  private static final int CLOSE = 6;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
  void everyExifTurnEndsUpright(int turn) throws Exception {
    BufferedImage upright = MadePictures.quarters(160, 96);
    byte[] file =
        MadePictures.withSegment(
            MadePictures.file(MadePictures.lying(upright, turn), "jpeg"),
            0xe1,
            MadePictures.exif(turn));

    CleanPicture clean = PictureDecoder.decode(file);

    assertThat(new int[] {clean.width(), clean.height()}).containsExactly(160, 96);
    assertThat(new int[] {clean.sourceWidth(), clean.sourceHeight()}).containsExactly(160, 96);
    BufferedImage image = image(clean);
    near(image, 20, 20, Color.RED);
    near(image, 140, 20, Color.GREEN);
    near(image, 20, 80, Color.BLUE);
    near(image, 140, 80, Color.WHITE);
  }

  @Test
  void nothingOfCameraOrPlaceIsKept() throws Exception {
    byte[] jpeg = MadePictures.file(MadePictures.quarters(120, 90), "jpeg");
    byte[] file = MadePictures.withSegment(jpeg, 0xe1, MadePictures.exif(6));

    byte[] clean = PictureDecoder.decode(file).jpeg();

    String text = new String(clean, StandardCharsets.ISO_8859_1);
    assertThat(text).doesNotContain("Invented camera").doesNotContain("Exif");
    // a second reading must not turn it again
    assertThat(PictureDecoder.decode(clean).width()).isEqualTo(90);
  }

  @ParameterizedTest
  @ValueSource(strings = {"jpeg", "png"})
  void anEmbeddedProfileIsAppliedOnce(String format) throws Exception {
    // linear light of 55/255 is coded 0.502 by IEC 61966-2-1: 128 of 255
    byte[] profile = ICC_Profile.getInstance(ColorSpace.CS_LINEAR_RGB).getData();
    byte[] plain = MadePictures.file(MadePictures.plain(100, 80, 0x373737), format);
    byte[] file =
        format.equals("png") ? plain : MadePictures.withSegment(plain, 0xe2, app2(profile));

    CleanPicture clean = PictureDecoder.decode(file);

    int expected = format.equals("png") ? 0x37 : 128;
    near(image(clean), 50, 40, new Color(expected, expected, expected));
    near(
        image(PictureDecoder.decode(clean.jpeg())),
        50,
        40,
        new Color(expected, expected, expected));
  }

  private static byte[] app2(byte[] profile) {
    var out = new ByteArrayOutputStream();
    out.writeBytes("ICC_PROFILE\0\1\1".getBytes(StandardCharsets.ISO_8859_1));
    out.writeBytes(profile);
    return out.toByteArray();
  }

  @Test
  void aBrokenProfileIsAsGoodAsNone() throws Exception {
    byte[] jpeg = MadePictures.file(MadePictures.plain(100, 80, 0x406080), "jpeg");
    byte[] file = MadePictures.withSegment(jpeg, 0xe2, app2(new byte[400]));

    near(image(PictureDecoder.decode(file)), 50, 40, new Color(0x40, 0x60, 0x80));
  }

  /** Written by ImageMagick 6 from sRGB (200, 40, 60), as Adobe does: YCCK, light and not ink. */
  @Test
  void ycckIsInkOnPaper() throws Exception {
    Color color = at(image(PictureDecoder.decode(ycck())), 5, 5);

    // without a profile of its own a press has to be assumed, so only roughly the same red
    assertThat(color.getRed()).isBetween(180, 215);
    assertThat(color.getGreen()).isBetween(30, 85);
    assertThat(color.getBlue()).isBetween(45, 85);
  }

  /**
   * The same samples, said to be CMYK as they stand: little light passes the third ink, yellow (28
   * of 255), and some of the other two, so that the paper looks olive.
   */
  @Test
  void cmykIsToldFromYcckByAdobesWord() throws Exception {
    byte[] file = ycck();
    file[new String(file, StandardCharsets.ISO_8859_1).indexOf("Adobe") + 11] = 0;

    Color color = at(image(PictureDecoder.decode(file)), 5, 5);

    assertThat(color.getBlue()).isLessThan(Math.min(color.getRed(), color.getGreen()) - 30);
  }

  private static byte[] ycck() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(PictureDecoderTest.class.getResourceAsStream("ycck-adobe.jpg"))) {
      return in.readAllBytes();
    }
  }

  @Test
  void grayStaysTheSameGray() throws Exception {
    var gray = new BufferedImage(100, 80, BufferedImage.TYPE_BYTE_GRAY);
    Arrays.setAll(new int[100], x -> fill(gray, x));

    near(
        image(PictureDecoder.decode(MadePictures.file(gray, "png"))),
        50,
        40,
        new Color(90, 90, 90));
  }

  private static int fill(BufferedImage gray, int x) {
    for (int y = 0; y < gray.getHeight(); y++) {
      gray.getRaster().setSample(x, y, 0, 90);
    }
    return x;
  }

  @Test
  void whatIsTransparentLiesOnWhite() throws Exception {
    var image = new BufferedImage(100, 80, BufferedImage.TYPE_INT_ARGB);
    image.setRGB(50, 40, 0xff000000);

    BufferedImage clean = image(PictureDecoder.decode(MadePictures.file(image, "png")));

    near(clean, 5, 5, Color.WHITE);
    assertThat(at(clean, 50, 40).getRed()).isLessThan(60);
  }

  @Test
  void aLargePictureIsMadeSmallerByMeans() throws Exception {
    var stripes = new BufferedImage(5120, 100, BufferedImage.TYPE_INT_RGB);
    for (int x = 0; x < 5120; x += 2) {
      for (int y = 0; y < 100; y++) {
        stripes.setRGB(x, y, 0xffffff);
      }
    }

    CleanPicture clean = PictureDecoder.decode(MadePictures.file(stripes, "png"));

    assertThat(clean.width()).isEqualTo(2560);
    assertThat(clean.sourceWidth()).isEqualTo(5120);
    near(image(clean), 1000, 25, new Color(128, 128, 128));
  }

  @ParameterizedTest
  @CsvSource({
    "30000, 30000, 210 million",
    "100000, 1, 32,000",
    "1, 1, too few",
    "63, 500, too few"
  })
  void sizesAreRefusedBeforeAnythingIsDecoded(int width, int height, String said) {
    byte[] file = MadePictures.claimingPng(width, height, 40_000);

    assertThatThrownBy(() -> PictureDecoder.decode(file))
        .isInstanceOf(PictureRefusal.class)
        .hasMessageContaining(width + " × " + height)
        .hasMessageContaining(said);
  }

  @Test
  void textThatIsCalledJpegIsNoPicture() {
    byte[] text = "Dear teacher,\n".getBytes(StandardCharsets.US_ASCII);

    assertThatThrownBy(() -> PictureDecoder.decode(text)).hasMessageContaining("no picture");
  }

  @Test
  void heicIsNamedWithTheWayOut() {
    byte[] heic = "\0\0\0\u0018ftypheic\0\0\0\0mif1heic".getBytes(StandardCharsets.ISO_8859_1);

    assertThatThrownBy(() -> PictureDecoder.decode(heic))
        .hasMessageContaining("HEIC")
        .satisfies(e -> assertThat(((PictureRefusal) e).next()).contains("most compatible"));
  }

  @Test
  void cutAndSpoiltFilesAreRefusedOrReadButNeverEndOtherwise() {
    byte[] whole =
        MadePictures.withSegment(
            MadePictures.file(MadePictures.quarters(160, 96), "jpeg"), 0xe1, MadePictures.exif(3));
    var random = new SplittableRandom(20260311);
    for (int round = 0; round < 400; round++) {
      byte[] file = Arrays.copyOf(whole, random.nextInt(whole.length));
      if (round % 2 == 0) {
        file = whole.clone();
        for (int i = 0; i < 4; i++) {
          file[random.nextInt(Math.min(600, file.length))] = (byte) random.nextInt(256);
        }
      }
      try {
        assertThat(PictureDecoder.decode(file).width()).isPositive();
      } catch (PictureRefusal refused) {
        assertThat(refused.next()).isNotBlank();
      }
    }
  }

  private static BufferedImage image(CleanPicture picture) throws IOException {
    return ImageIO.read(new ByteArrayInputStream(picture.jpeg()));
  }

  private static Color at(BufferedImage image, int x, int y) {
    return new Color(image.getRGB(x, y));
  }

  private static void near(BufferedImage image, int x, int y, Color expected) {
    Color found = at(image, x, y);
    assertThat(found.getRed()).isBetween(expected.getRed() - CLOSE, expected.getRed() + CLOSE);
    assertThat(found.getGreen())
        .isBetween(expected.getGreen() - CLOSE, expected.getGreen() + CLOSE);
    assertThat(found.getBlue()).isBetween(expected.getBlue() - CLOSE, expected.getBlue() + CLOSE);
  }
}
