package org.lehrcase.bench.picture;

import java.awt.color.CMMException;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.awt.image.ColorConvertOp;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceCMYK;
import org.lehrcase.bench.picture.PictureHeader.Ink;

/**
 * Turns samples of any meaning into sRGB, once, with the picture's own profile where it has one.
 */
final class ToSrgb {
  private final Samples samples;
  private final Optional<ICC_Profile> profile;

  ToSrgb(Samples samples, Optional<byte[]> profile) {
    this.samples = samples;
    this.profile = profile.flatMap(bytes -> usable(bytes, samples.bands()));
  }

  /** A profile that is broken, or of another number of colours, is as good as none. */
  private static Optional<ICC_Profile> usable(byte[] bytes, int bands) {
    try {
      ICC_Profile profile = ICC_Profile.getInstance(bytes);
      return profile.getNumComponents() == bands ? Optional.of(profile) : Optional.empty();
    } catch (IllegalArgumentException | CMMException e) {
      return Optional.empty();
    }
  }

  /**
   * Converts.
   *
   * @param ink what the samples mean
   * @param lightNotInk whether CMYK counts light, as Adobe writes it
   */
  BufferedImage image(Ink ink, boolean lightNotInk) throws IOException {
    byte[] octets = samples.octets();
    switch (ink) {
      case YCC -> fromYcc(octets, 3, false);
      case YCCK -> fromYcc(octets, 4, true);
      default -> {}
    }
    if (samples.bands() == 4) {
      if (lightNotInk) {
        for (int i = 0; i < octets.length; i++) {
          octets[i] = (byte) ~octets[i];
        }
      }
      return profile.isPresent()
          ? converted(profile.get())
          : PDDeviceCMYK.INSTANCE.toRGBImage(raster());
    }
    return profile.isPresent() ? converted(profile.get()) : plain();
  }

  /** ITU-T T.871; for YCCK the three are colours of light, whose inks are the rest to 255. */
  private static void fromYcc(byte[] octets, int bands, boolean inks) {
    for (int i = 0; i + bands <= octets.length; i += bands) {
      double y = octets[i] & 0xff;
      double cb = (octets[i + 1] & 0xff) - 128;
      double cr = (octets[i + 2] & 0xff) - 128;
      int r = clamp(y + 1.402 * cr);
      int g = clamp(y - 0.344136 * cb - 0.714136 * cr);
      int b = clamp(y + 1.772 * cb);
      octets[i] = (byte) (inks ? 255 - r : r);
      octets[i + 1] = (byte) (inks ? 255 - g : g);
      octets[i + 2] = (byte) (inks ? 255 - b : b);
    }
  }

  private static int clamp(double value) {
    return (int) Math.max(0, Math.min(255, Math.round(value)));
  }

  private WritableRaster raster() {
    int bands = samples.bands();
    int[] offsets = new int[bands];
    for (int band = 0; band < bands; band++) {
      offsets[band] = band;
    }
    var buffer = new DataBufferByte(samples.octets(), samples.octets().length);
    return Raster.createInterleavedRaster(
        buffer, samples.width(), samples.height(), samples.width() * bands, bands, offsets, null);
  }

  private BufferedImage converted(ICC_Profile own) {
    ICC_Profile srgb = ICC_Profile.getInstance(ColorSpace.CS_sRGB);
    WritableRaster to =
        Raster.createInterleavedRaster(
            DataBuffer.TYPE_BYTE, samples.width(), samples.height(), 3, null);
    try {
      new ColorConvertOp(new ICC_Profile[] {own, srgb}, null).filter(raster(), to);
    } catch (CMMException | IllegalArgumentException e) {
      return plain(); // a profile that cannot be used is as good as none
    }
    var image = new BufferedImage(samples.width(), samples.height(), BufferedImage.TYPE_INT_RGB);
    int[] rgb = new int[3];
    for (int y = 0; y < samples.height(); y++) {
      for (int x = 0; x < samples.width(); x++) {
        to.getPixel(x, y, rgb);
        image.setRGB(x, y, rgb[0] << 16 | rgb[1] << 8 | rgb[2]);
      }
    }
    return image;
  }

  /** Gray is the same value three times: a gray of Java's own would be taken for linear light. */
  private BufferedImage plain() {
    var image = new BufferedImage(samples.width(), samples.height(), BufferedImage.TYPE_INT_RGB);
    boolean gray = samples.bands() < 3;
    for (int y = 0; y < samples.height(); y++) {
      for (int x = 0; x < samples.width(); x++) {
        int r = samples.at(x, y, 0);
        int g = gray ? r : samples.at(x, y, 1);
        int b = gray ? r : samples.at(x, y, 2);
        image.setRGB(x, y, r << 16 | g << 8 | b);
      }
    }
    return image;
  }
}
