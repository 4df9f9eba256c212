package org.lehrcase.bench.picture;

import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import org.lehrcase.core.layers.perspective.Fading;
import org.lehrcase.core.layers.tone.ValueStudy;

/**
 * Value studies of a clean picture: what lies inside some outlines in few tones, cut where they
 * leave the least error, each tone as pale as the sheet's distance asks for.
 */
public final class ToneStudy {
  /** Longest side of a study in pixels. */
  static final int LONGEST = 900;

  private static final int NOWHERE = -1;

  private final BufferedImage picture;

  /**
   * What to study.
   *
   * @param outlines closed lines, each point as shares of the picture's width and height
   * @param tones at most so many
   * @param contrast what the sheet keeps, 0 to 1
   */
  public record Wish(List<List<double[]>> outlines, int tones, double contrast) {}

  /**
   * A study.
   *
   * @param png gray pixels, clear outside the outlines
   * @param study thresholds and means, bins of CIE lightness
   */
  @SuppressWarnings("ArrayRecordComponent") // handed on at once, never compared
  public record Study(byte[] png, ValueStudy study) {}

  private ToneStudy(BufferedImage picture) {
    this.picture = picture;
  }

  /**
   * Reads a clean picture, no larger than a study needs it.
   *
   * @param jpeg a picture that this room has made
   * @throws IOException if it cannot be read
   */
  public static ToneStudy of(byte[] jpeg) throws IOException {
    try (ImageInputStream in = new MemoryCacheImageInputStream(new ByteArrayInputStream(jpeg))) {
      Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName("jpeg");
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, true, true);
        int longest = Math.max(reader.getWidth(0), reader.getHeight(0));
        int step = Math.max(1, (longest + LONGEST - 1) / LONGEST);
        ImageReadParam param = reader.getDefaultReadParam();
        param.setSourceSubsampling(step, step, 0, 0);
        return new ToneStudy(reader.read(0, param));
      } finally {
        reader.dispose();
      }
    }
  }

  /**
   * Makes a study.
   *
   * @param wish what to study
   * @param leastMm regions narrower than this many shares of the picture's width are given to their
   *     surroundings
   * @throws IllegalArgumentException if no pixel lies inside the outlines
   */
  public Study study(Wish wish, double leastMm) {
    int[] bins = bins(mask(wish.outlines()));
    long[] counts = new long[ValueStudy.BINS];
    for (int bin : bins) {
      if (bin != NOWHERE) {
        counts[bin]++;
      }
    }
    ValueStudy study = ValueStudy.of(counts, wish.tones());
    int[] tones = Arrays.stream(bins).map(b -> b == NOWHERE ? NOWHERE : study.tone(b)).toArray();
    int side = (int) Math.max(1, Math.round(leastMm * picture.getWidth()));
    var regions = new ToneRegions(tones, picture.getWidth());
    return new Study(png(regions.smoothed(side * side), study, wish.contrast()), study);
  }

  private BufferedImage mask(List<List<double[]>> outlines) {
    var mask =
        new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
    Graphics2D pen = mask.createGraphics();
    for (List<double[]> outline : outlines) {
      var path = new Path2D.Double();
      for (double[] point : outline) {
        double x = point[0] * picture.getWidth();
        double y = point[1] * picture.getHeight();
        if (path.getCurrentPoint() == null) {
          path.moveTo(x, y);
        } else {
          path.lineTo(x, y);
        }
      }
      path.closePath();
      pen.fill(path);
    }
    pen.dispose();
    return mask;
  }

  private int[] bins(BufferedImage mask) {
    int width = picture.getWidth();
    int[] bins = new int[width * picture.getHeight()];
    for (int i = 0; i < bins.length; i++) {
      int x = i % width;
      int y = i / width;
      int rgb = picture.getRGB(x, y);
      boolean inside = mask.getRaster().getSample(x, y, 0) > 0;
      bins[i] = inside ? ValueStudy.bin(rgb >> 16 & 0xff, rgb >> 8 & 0xff, rgb & 0xff) : NOWHERE;
    }
    return bins;
  }

  private byte[] png(int[] tones, ValueStudy study, double contrast) {
    int[] colors = study.means().stream().mapToInt(bin -> gray(bin, contrast)).toArray();
    var image =
        new BufferedImage(picture.getWidth(), picture.getHeight(), BufferedImage.TYPE_INT_ARGB);
    for (int i = 0; i < tones.length; i++) {
      if (tones[i] != NOWHERE) {
        image.setRGB(i % image.getWidth(), i / image.getWidth(), colors[tones[i]]);
      }
    }
    try {
      var out = new ByteArrayOutputStream();
      ImageIO.write(image, "png", out);
      return out.toByteArray();
    } catch (IOException e) {
      throw new IllegalStateException("memory cannot be written to", e);
    }
  }

  /** CIE lightness back to light, on its way to white, and to a coded gray. */
  private static int gray(double bin, double contrast) {
    double lightness = 100 * bin / (ValueStudy.BINS - 1);
    double cube = (lightness + 16) / 116;
    double light = lightness > 8 ? cube * cube * cube : lightness * 27 / 24389;
    long gray = Math.round(255 * Fading.coded(Fading.tinted(light, 1, contrast)));
    return (int) (0xff000000L | gray << 16 | gray << 8 | gray);
  }
}
