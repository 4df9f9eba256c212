package org.lehrcase.bench.picture;

import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.lehrcase.bench.picture.PictureHeader.Ink;
import org.lehrcase.bench.picture.PictureHeader.Kind;

/** Decodes a picture within bounded memory, in this process. */
public final class PictureDecoder {
  private final byte[] file;
  private final PictureHeader header;

  private PictureDecoder(byte[] file) throws PictureRefusal {
    this.file = file;
    this.header = HeaderReader.read(file);
  }

  /**
   * Decodes.
   *
   * @param file a JPEG or PNG
   * @return the picture, at most 2560 pixels along its longer side
   * @throws PictureRefusal if it is none, or too large, or damaged
   */
  public static CleanPicture decode(byte[] file) throws PictureRefusal {
    var decoder = new PictureDecoder(file);
    try {
      BufferedImage lying = decoder.image();
      return CleanJpeg.of(lying, decoder.header.exifTurn(), decoder.sourceSize());
    } catch (IOException e) {
      throw HeaderReader.damaged("its pixels cannot be read");
    } catch (RuntimeException e) {
      // the decoders of the Java library end like this on some broken files
      throw HeaderReader.damaged("its pixels make no sense");
    }
  }

  private int[] sourceSize() {
    boolean swaps = header.exifTurn() >= 5;
    return swaps
        ? new int[] {header.height(), header.width()}
        : new int[] {header.width(), header.height()};
  }

  private BufferedImage image() throws IOException, PictureRefusal {
    ImageReader reader =
        ImageIO.getImageReadersByFormatName(header.kind().name().toLowerCase(Locale.ROOT)).next();
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(file))) {
      reader.setInput(in, true, true);
      return header.kind() == Kind.JPEG ? jpeg(reader) : png(reader);
    } finally {
      reader.dispose();
    }
  }

  private ImageReadParam param(ImageReader reader, int samples) {
    int step = PictureLimits.step(header.width(), header.height(), samples);
    ImageReadParam param = reader.getDefaultReadParam();
    param.setSourceSubsampling(step, step, 0, 0);
    return param;
  }

  /** The raw numbers, as the reader of the Java library refuses CMYK otherwise. */
  private BufferedImage jpeg(ImageReader reader) throws IOException {
    int bands = header.ink() == Ink.CMYK || header.ink() == Ink.YCCK ? 4 : 3;
    Raster raw = reader.readRaster(0, param(reader, bands));
    Samples samples = Samples.reduced(raw, PictureLimits.KEPT_SIDE);
    return new ToSrgb(samples, header.profile()).image(header.ink(), JpegHeader.isAdobe(file));
  }

  private BufferedImage png(ImageReader reader) throws IOException {
    BufferedImage decoded = reader.read(0, param(reader, PngHeader.octetsPerPixel(file)));
    WritableRaster raster = decoded.getRaster();
    ColorModel model = decoded.getColorModel();
    Raster plain = model instanceof IndexColorModel index ? unfolded(raster, index) : raster;
    Samples samples = Samples.reduced(plain, PictureLimits.KEPT_SIDE);
    Samples opaque = model.hasAlpha() ? onWhite(samples) : samples;
    Optional<byte[]> profile = header.profile();
    return new ToSrgb(opaque, profile).image(header.ink(), false);
  }

  private static Raster unfolded(Raster raster, IndexColorModel palette) {
    return palette.convertToIntDiscrete(raster, false).getRaster();
  }

  /** What can be seen through lies on white paper. */
  private static Samples onWhite(Samples from) {
    int bands = from.bands() - 1;
    byte[] octets = new byte[from.width() * from.height() * bands];
    int to = 0;
    for (int i = 0; i < from.octets().length; i += from.bands()) {
      int alpha = from.octets()[i + bands] & 0xff;
      for (int band = 0; band < bands; band++) {
        int value = from.octets()[i + band] & 0xff;
        octets[to++] = (byte) ((value * alpha + 255 * (255 - alpha) + 127) / 255);
      }
    }
    return new Samples(from.width(), from.height(), bands, octets);
  }
}
