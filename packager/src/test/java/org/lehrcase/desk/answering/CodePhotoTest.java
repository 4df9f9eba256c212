package org.lehrcase.desk.answering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.help.QrSquares;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.PlaceSeed;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.CodeText;

class CodePhotoTest {
  private static final byte[] CARD =
      LaptopCard.make(PlaceSeed.random(new java.security.SecureRandom()), LaptopCard.About.NOTHING)
          .toBytes();
  private static final String CODE = CodeText.write(ArmorKind.LAPTOP_CARD, CARD).get(0);

  @ParameterizedTest(name = "{0}: {1} x {2} pixels, turned by {3} degrees")
  @CsvSource({
    "png, 1280, 720, 0",
    "png, 720, 1280, 180",
    "jpg, 4000, 3000, 90",
    "jpg, 4000, 3000, 4",
    "jpg, 1600, 1200, 272"
  })
  void aCardIsReadOffAPhoto(String form, int width, int height, double degrees) throws Exception {
    byte[] photo = photo(form, width, height, degrees, List.of(CODE));
    assertThat(CodePhoto.isPicture(photo)).isTrue();
    assertThat(Armor.find(CodePhoto.text(photo)))
        .singleElement()
        .satisfies(block -> assertThat(block.bytes()).isEqualTo(CARD));
  }

  @Test
  void twoCodesOfOnePhotoAreBothRead() throws Exception {
    byte[] message = new byte[300];
    new Random(5).nextBytes(message);
    List<String> codes = CodeText.write(ArmorKind.CORRECTION, message);
    String text = CodePhoto.text(photo("png", 1600, 800, 0, codes));
    assertThat(text.lines()).containsExactlyInAnyOrderElementsOf(codes);
    assertThat(Armor.find(text)).singleElement();
  }

  @Test
  void aPhotoWithoutACodeSaysWhatToAskFor() throws Exception {
    byte[] photo = photo("jpg", 800, 600, 0, List.of());
    assertThatThrownBy(() -> CodePhoto.text(photo))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("no code")
        .hasMessageContaining("Nothing was changed");
  }

  @Test
  void aPhoneFormThatIsNotReadIsNamed() {
    byte[] heic = "....ftypheic....".getBytes(StandardCharsets.US_ASCII);
    assertThat(CodePhoto.isPicture(heic)).isTrue();
    assertThatThrownBy(() -> CodePhoto.text(heic))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("HEIC");
  }

  @Test
  void aPictureThatClaimsToBeEnormousIsRefusedBeforeItIsDecoded() {
    byte[] enormous = pngHead(30_000, 30_000);
    assertThatThrownBy(() -> CodePhoto.text(enormous))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("30000 x 30000");
  }

  @ParameterizedTest
  @CsvSource({"9", "40", "400", "2000"})
  void aPhotoCutShortIsRefused(int bytes) throws Exception {
    byte[] photo = photo("png", 600, 600, 0, List.of(CODE));
    byte[] cut = java.util.Arrays.copyOf(photo, Math.min(bytes, photo.length / 2));
    assertThatThrownBy(() -> CodePhoto.text(cut)).isInstanceOf(RefusedException.class);
  }

  @Test
  void aTextIsNoPicture() {
    assertThat(CodePhoto.isPicture("Dear teacher".getBytes(StandardCharsets.UTF_8))).isFalse();
    assertThat(CodePhoto.isPicture(new byte[0])).isFalse();
  }

  static byte[] photo(String form, int width, int height, double degrees, List<String> codes)
      throws IOException {
    BufferedImage photo = new BufferedImage(width, height, BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D g = photo.createGraphics();
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.setColor(new Color(0x8899a0));
    g.fillRect(0, 0, width, height);
    g.rotate(Math.toRadians(degrees), width / 2.0, height / 2.0);
    int side = Math.min(height * 2 / 3, width / (codes.size() + 1));
    int left = (width - side * codes.size() - side / 4) / 2;
    for (String code : codes) {
      g.drawImage(squares(code), left, (height - side) / 2, side, side, null);
      left += side * 5 / 4;
    }
    g.dispose();
    noise(photo);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ImageIO.write(photo, form, out);
    return out.toByteArray();
  }

  private static BufferedImage squares(String code) {
    List<String> rows = QrSquares.rows(code);
    int side = rows.size() + 8;
    BufferedImage squares = new BufferedImage(side * 8, side * 8, BufferedImage.TYPE_BYTE_GRAY);
    for (int y = 0; y < side * 8; y++) {
      for (int x = 0; x < side * 8; x++) {
        int row = y / 8 - 4;
        int column = x / 8 - 4;
        boolean inside = Math.min(row, column) >= 0 && Math.max(row, column) < rows.size();
        boolean dark = inside && rows.get(row).charAt(column) == '1';
        squares.setRGB(x, y, dark ? 0x303030 : 0xe8e8e8);
      }
    }
    return squares;
  }

  private static void noise(BufferedImage photo) {
    Random random = new Random(3);
    byte[] samples = ((java.awt.image.DataBufferByte) photo.getRaster().getDataBuffer()).getData();
    for (int i = 0; i < samples.length; i++) {
      int noisy = (samples[i] & 0xff) + random.nextInt(17) - 8;
      samples[i] = (byte) Math.max(0, Math.min(255, noisy));
    }
  }

  /** The first chunk of a PNG file (W3C PNG, 11.2.2), and nothing behind it. */
  private static byte[] pngHead(int width, int height) {
    ByteBuffer head = ByteBuffer.allocate(17);
    head.put("IHDR".getBytes(StandardCharsets.US_ASCII)).putInt(width).putInt(height);
    head.put(new byte[] {8, 2, 0, 0, 0});
    CRC32 crc = new CRC32();
    crc.update(head.array());
    ByteBuffer png = ByteBuffer.allocate(8 + 4 + 17 + 4);
    png.putLong(0x89504e470d0a1a0aL).putInt(13).put(head.array()).putInt((int) crc.getValue());
    return png.array();
  }
}
