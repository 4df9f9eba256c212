package org.lehrcase.bench.notebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class NotePictureTest {
  private static final String PLACE = "GPS 0 N 0 E, an invented place";

  private static byte[] jpeg(int width, int height, String format) throws Exception {
    var out = new ByteArrayOutputStream();
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    image.setRGB(1, 1, 0x3366aa);
    ImageIO.write(image, format, out);
    return out.toByteArray();
  }

  /** Puts an Exif segment (JEITA CP-3451) behind the start of the picture. */
  private static byte[] withPlace(byte[] jpeg) {
    byte[] words = ("Exif\0\0" + PLACE).getBytes(StandardCharsets.ISO_8859_1);
    return ByteBuffer.allocate(jpeg.length + words.length + 4)
        .put(jpeg, 0, 2)
        .put((byte) 0xff)
        .put((byte) 0xe1)
        .putShort((short) (words.length + 2))
        .put(words)
        .put(jpeg, 2, jpeg.length - 2)
        .array();
  }

  @Test
  void whatTheCameraWroteBesideThePictureIsGone() throws Exception {
    byte[] photo = withPlace(jpeg(64, 48, "jpeg"));
    assertThat(new String(photo, StandardCharsets.ISO_8859_1)).contains(PLACE);
    byte[] clean = NotePicture.clean(photo).bytes();
    assertThat(new String(clean, StandardCharsets.ISO_8859_1)).doesNotContain(PLACE, "Exif");
    BufferedImage read = ImageIO.read(new ByteArrayInputStream(clean));
    assertThat(read.getWidth()).isEqualTo(64);
    assertThat(read.getHeight()).isEqualTo(48);
  }

  @Test
  void aPictureWithTooManyPixelsIsRefusedByItsHead() throws Exception {
    byte[] photo = jpeg(64, 48, "jpeg");
    for (int i = 0; i + 8 < photo.length; i++) {
      if (photo[i] == (byte) 0xff && photo[i + 1] == (byte) 0xc0) {
        ByteBuffer.wrap(photo).putShort(i + 5, (short) 60_000).putShort(i + 7, (short) 60_000);
        break;
      }
    }
    assertThatThrownBy(() -> NotePicture.clean(photo))
        .isInstanceOf(NoteFault.class)
        .hasMessageContaining("million pixels");
  }

  @Test
  void whatIsNoJpegIsRefused() throws Exception {
    assertThatThrownBy(() -> NotePicture.clean(jpeg(8, 8, "png"))).isInstanceOf(NoteFault.class);
    assertThatThrownBy(() -> NotePicture.clean(new byte[0])).isInstanceOf(NoteFault.class);
    byte[] cut = Arrays.copyOf(jpeg(64, 48, "jpeg"), 40);
    assertThatThrownBy(() -> NotePicture.clean(cut)).isInstanceOf(NoteFault.class);
  }

  @Test
  void theSamePictureHasTheSameName() throws Exception {
    byte[] photo = jpeg(64, 48, "jpeg");
    assertThat(NotePicture.clean(photo).id()).isEqualTo(NotePicture.clean(withPlace(photo)).id());
  }
}
