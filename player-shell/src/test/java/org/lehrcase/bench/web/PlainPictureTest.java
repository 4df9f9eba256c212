package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a camera writes beside a picture goes; the picture stays as it was. */
class PlainPictureTest {
  private static final String PLACE = "GPS 47.0001N 8.0002E";

  private static byte[] picture(String format) throws IOException {
    var image = new BufferedImage(40, 30, BufferedImage.TYPE_INT_RGB);
    for (int i = 0; i < 1200; i++) {
      image.setRGB(i % 40, i / 40, i * 6151);
    }
    var out = new ByteArrayOutputStream();
    ImageIO.write(image, format, out);
    return out.toByteArray();
  }

  private static byte[] joined(byte[]... parts) {
    var out = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      out.writeBytes(part);
    }
    return out.toByteArray();
  }

  private static byte[] latin(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  /** An Exif segment with an orientation and a place, after JEITA CP-3451. */
  private static byte[] exif(int orientation) {
    byte[] place = latin(PLACE);
    var segment = ByteBuffer.allocate(36 + place.length);
    segment.put((byte) 0xff).put((byte) 0xe1).putShort((short) (34 + place.length));
    segment.put(latin("Exif\0\0II")).order(java.nio.ByteOrder.LITTLE_ENDIAN);
    segment.putShort((short) 42).putInt(8).putShort((short) 1);
    segment.putShort((short) 0x0112).putShort((short) 3).putInt(1);
    segment.putShort((short) orientation).putShort((short) 0).put(place);
    return segment.array();
  }

  private static byte[] comment() {
    byte[] place = latin(PLACE);
    return joined(new byte[] {(byte) 0xff, (byte) 0xfe, 0, (byte) (place.length + 2)}, place);
  }

  private static byte[] taken(byte[] jpeg, int orientation) {
    byte[] rest = Arrays.copyOfRange(jpeg, 2, jpeg.length);
    byte[] second = joined(exif(1), latin("a second picture " + PLACE));
    return joined(Arrays.copyOf(jpeg, 2), exif(orientation), comment(), rest, second);
  }

  private static boolean tells(byte[] picture) {
    return new String(picture, StandardCharsets.ISO_8859_1).contains("GPS");
  }

  private static int[] pixels(byte[] picture) throws IOException {
    BufferedImage image = ImageIO.read(new ByteArrayInputStream(picture));
    return image.getRGB(0, 0, image.getWidth(), image.getHeight(), null, 0, image.getWidth());
  }

  @Test
  void aJpegLosesItsPlaceAndWhatHangsBehindItAndKeepsItsPixels() throws IOException {
    byte[] jpeg = picture("jpg");
    byte[] taken = taken(jpeg, 1);
    assertThat(tells(taken)).isTrue();
    byte[] plain = PlainPicture.of(taken).orElseThrow();
    assertThat(tells(plain)).isFalse();
    assertThat(plain).isEqualTo(jpeg);
    assertThat(pixels(plain)).isEqualTo(pixels(jpeg));
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 6, 8})
  void aPictureThatLiesOnItsSideStillStandsUpright(int orientation) throws IOException {
    byte[] jpeg = picture("jpg");
    byte[] plain = PlainPicture.of(taken(jpeg, orientation)).orElseThrow();
    assertThat(tells(plain)).isFalse();
    // marker, length, "Exif", TIFF head, one entry: its value is the orientation
    assertThat(ByteBuffer.wrap(plain).getShort(2 + 4 + 6 + 8 + 2 + 8))
        .isEqualTo((short) orientation);
    assertThat(pixels(plain)).isEqualTo(pixels(jpeg));
  }

  private static byte[] chunk(String kind, byte[] body) {
    var crc = new CRC32();
    crc.update(latin(kind));
    crc.update(body);
    var chunk = ByteBuffer.allocate(12 + body.length).putInt(body.length).put(latin(kind));
    return chunk.put(body).putInt((int) crc.getValue()).array();
  }

  @Test
  void aPngLosesItsTextsAndKeepsItsPixels() throws IOException {
    byte[] png = picture("png");
    byte[] head = Arrays.copyOf(png, 33);
    byte[] rest = Arrays.copyOfRange(png, 33, png.length);
    byte[] told = chunk("tEXt", latin("Comment\0" + PLACE));
    byte[] taken = joined(head, told, chunk("eXIf", latin(PLACE)), rest, latin("GPS behind"));
    byte[] plain = PlainPicture.of(taken).orElseThrow();
    assertThat(plain).isEqualTo(png);
    assertThat(pixels(plain)).isEqualTo(pixels(png));
  }

  private static byte[] riff(String kind, byte[] body) {
    var chunk = ByteBuffer.allocate(8 + body.length + body.length % 2);
    chunk.order(java.nio.ByteOrder.LITTLE_ENDIAN).put(latin(kind)).putInt(body.length).put(body);
    return chunk.array();
  }

  private static byte[] webp(byte flags, byte[]... chunks) {
    byte[] extended = riff("VP8X", new byte[] {flags, 0, 0, 0, 39, 0, 0, 29, 0, 0});
    byte[] body = joined(latin("WEBP"), extended, joined(chunks));
    var whole = ByteBuffer.allocate(8 + body.length).order(java.nio.ByteOrder.LITTLE_ENDIAN);
    return whole.put(latin("RIFF")).putInt(body.length).put(body).array();
  }

  @Test
  void aWebpLosesItsExifAndSaysThatItHasNone() {
    byte[] pixels = riff("VP8 ", new byte[] {1, 2, 3});
    byte[] taken =
        webp((byte) 0x0c, pixels, riff("EXIF", latin(PLACE)), riff("XMP ", latin(PLACE)));
    assertThat(PlainPicture.of(taken)).contains(webp((byte) 0, pixels));
  }

  @Test
  void whatIsCutShortOrLeadsOutOfTheFileIsNoPicture() throws IOException {
    byte[] jpeg = picture("jpg");
    byte[] png = picture("png");
    assertThat(PlainPicture.of(Arrays.copyOf(jpeg, jpeg.length / 2))).isEmpty();
    assertThat(PlainPicture.of(Arrays.copyOf(png, png.length / 2))).isEmpty();
    assertThat(PlainPicture.of(latin("<svg/>"))).isEmpty();
    var random = new SplittableRandom(7);
    for (int i = 0; i < 400; i++) {
      byte[] broken = taken(jpeg, 6);
      for (int hit = 0; hit < 4; hit++) {
        broken[random.nextInt(3, 200)] = (byte) random.nextInt(256);
      }
      // whatever comes of it, it comes, and no more than was there with one orientation
      int size = PlainPicture.of(broken).map(plain -> plain.length).orElse(0);
      assertThat(size).isLessThanOrEqualTo(broken.length + 36);
    }
  }
}
