package org.lehrcase.bench.picture;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.lehrcase.core.layers.tone.Upright;

/** Writes pixels upright into a fresh file. */
final class CleanJpeg {
  private static final float QUALITY = 0.9f;

  private CleanJpeg() {}

  static CleanPicture of(BufferedImage lying, int exifTurn, int[] sourceSize) throws IOException {
    BufferedImage image = upright(lying, new Upright(exifTurn));
    var size = new int[] {image.getWidth(), image.getHeight()};
    return new CleanPicture(size, sourceSize, bytes(image));
  }

  private static BufferedImage upright(BufferedImage lying, Upright turn) {
    int w = lying.getWidth();
    int h = lying.getHeight();
    int width = turn.swaps() ? h : w;
    int height = turn.swaps() ? w : h;
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < h; y++) {
      for (int x = 0; x < w; x++) {
        image.setRGB(turn.x(x, y, w, h), turn.y(x, y, w, h), lying.getRGB(x, y));
      }
    }
    return image;
  }

  private static byte[] bytes(BufferedImage image) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    var out = new ByteArrayOutputStream();
    try (var stream = new MemoryCacheImageOutputStream(out)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(QUALITY);
      writer.setOutput(stream);
      writer.write(null, new IIOImage(image, null, null), param);
    } finally {
      writer.dispose();
    }
    return out.toByteArray();
  }
}
