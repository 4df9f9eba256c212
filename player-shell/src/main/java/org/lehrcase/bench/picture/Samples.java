package org.lehrcase.bench.picture;

import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.util.Arrays;

/**
 * Pixels as octets, band by band within each pixel, of a picture that was made smaller.
 *
 * @param width pixels in a row
 * @param height rows
 * @param bands samples of a pixel
 * @param octets the samples
 */
@SuppressWarnings("ArrayRecordComponent") // handed on within this room, never compared
record Samples(int width, int height, int bands, byte[] octets) {
  int at(int x, int y, int band) {
    return octets[(y * width + x) * bands + band] & 0xff;
  }

  /** Makes a raster smaller: each new pixel is the mean of all old ones that fall on it. */
  static Samples reduced(Raster raster, int longest) {
    int long1 = Math.max(raster.getWidth(), raster.getHeight());
    int width = raster.getWidth();
    int height = raster.getHeight();
    if (long1 > longest) {
      width = Math.max(1, Math.round((float) raster.getWidth() * longest / long1));
      height = Math.max(1, Math.round((float) raster.getHeight() * longest / long1));
    }
    return new Shrinker(raster, width, height).run();
  }

  /** Adds rows up until a new row is full. */
  private static final class Shrinker {
    private final Raster raster;
    private final int bands;
    private final Samples out;
    private final int[] sums;
    private final int[] counts;
    private final int[] toX;

    Shrinker(Raster raster, int width, int height) {
      this.raster = raster;
      this.bands = raster.getNumBands();
      this.out = new Samples(width, height, bands, new byte[width * height * bands]);
      this.sums = new int[width * bands];
      this.counts = new int[width];
      this.toX = new int[raster.getWidth()];
      for (int x = 0; x < toX.length; x++) {
        toX[x] = (int) ((long) x * width / toX.length);
      }
    }

    Samples run() {
      int high = raster.getHeight();
      boolean plain = raster.getTransferType() == DataBuffer.TYPE_BYTE && eightBits();
      byte[] octets = new byte[raster.getWidth() * bands];
      int[] row = new int[raster.getWidth() * bands];
      for (int y = 0; y < high; y++) {
        if (plain) {
          raster.getDataElements(raster.getMinX(), raster.getMinY() + y, toX.length, 1, octets);
        } else {
          raster.getPixels(raster.getMinX(), raster.getMinY() + y, toX.length, 1, row);
          toOctets(row, octets);
        }
        add(octets);
        int mine = (int) ((long) y * out.height() / high);
        if (y + 1 == high || (int) ((y + 1L) * out.height() / high) != mine) {
          flush(mine);
        }
      }
      return out;
    }

    private boolean eightBits() {
      for (int band = 0; band < bands; band++) {
        if (raster.getSampleModel().getSampleSize(band) != 8) {
          return false;
        }
      }
      return true;
    }

    private void toOctets(int[] row, byte[] octets) {
      for (int i = 0; i < row.length; i++) {
        int most = (1 << raster.getSampleModel().getSampleSize(i % bands)) - 1;
        octets[i] = (byte) ((row[i] * 255L + most / 2) / most);
      }
    }

    private void add(byte[] octets) {
      int from = 0;
      for (int to : toX) {
        counts[to]++;
        int sum = to * bands;
        for (int band = 0; band < bands; band++) {
          sums[sum++] += octets[from++] & 0xff;
        }
      }
    }

    private void flush(int y) {
      int at = y * out.width() * bands;
      for (int x = 0; x < out.width(); x++) {
        for (int band = 0; band < bands; band++) {
          int sum = sums[x * bands + band];
          out.octets()[at++] = (byte) ((sum + counts[x] / 2) / counts[x]);
        }
        counts[x] = 0;
      }
      Arrays.fill(sums, 0);
    }
  }
}
