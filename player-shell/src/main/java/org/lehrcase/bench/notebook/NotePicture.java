package org.lehrcase.bench.notebook;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.lehrcase.bench.store.NotePictureTable.Picture;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;

/**
 * Makes a picture fit to be kept: its size is read before any of it is decoded, and its pixels are
 * written anew, so that nothing stays of what a camera wrote beside them, such as the place.
 */
public final class NotePicture {
  /** Most pixels, so that all of it fits the small heap; the page sends 1,600 a side at most. */
  public static final int MOST_PIXELS = 3_000_000;

  private static final String JPEG = "image/jpeg";

  private NotePicture() {}

  /**
   * Cleans a picture.
   *
   * @param file a JPEG, as the page has drawn it
   * @return the picture, named by its new bytes
   * @throws NoteFault if it is none, or has too many pixels
   */
  public static Picture clean(byte[] file) throws NoteFault {
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(file))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      while (readers.hasNext()) {
        ImageReader reader = readers.next();
        try {
          if (reader.getFormatName().equalsIgnoreCase("jpeg")) {
            return written(pixels(reader, in));
          }
        } finally {
          reader.dispose();
        }
      }
    } catch (IOException | IllegalArgumentException e) {
      throw new NoteFault("this picture is damaged");
    }
    throw new NoteFault("a photo is kept as JPEG");
  }

  private static BufferedImage pixels(ImageReader reader, ImageInputStream in)
      throws IOException, NoteFault {
    reader.setInput(in, true, true);
    long pixels = (long) reader.getWidth(0) * reader.getHeight(0);
    if (pixels > MOST_PIXELS) {
      throw new NoteFault("a photo has at most " + MOST_PIXELS / 1_000_000 + " million pixels");
    }
    return reader.read(0);
  }

  private static Picture written(BufferedImage pixels) throws IOException {
    BufferedImage plain =
        new BufferedImage(pixels.getWidth(), pixels.getHeight(), BufferedImage.TYPE_INT_RGB);
    var pen = plain.createGraphics();
    pen.drawImage(pixels, 0, 0, null);
    pen.dispose();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (var stream = new MemoryCacheImageOutputStream(out)) {
      ImageIO.write(plain, "jpeg", stream);
    }
    return named(out.toByteArray());
  }

  /**
   * Names a picture that was cleaned before, as on another laptop.
   *
   * @param jpeg its bytes
   * @return the picture
   */
  static Picture named(byte[] jpeg) {
    return new Picture(Octets.of(Sha256.of16(jpeg)).hex(), JPEG, jpeg);
  }
}
