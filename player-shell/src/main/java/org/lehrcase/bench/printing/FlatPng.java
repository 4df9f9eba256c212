package org.lehrcase.bench.printing;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.SequenceInputStream;
import java.nio.ByteBuffer;
import java.util.Collections;
import java.util.Optional;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.InflaterInputStream;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceGray;
import org.apache.pdfbox.pdmodel.graphics.color.PDDeviceRGB;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;

/**
 * Puts a see-through PNG on white paper, row by row: decoded as a whole, a template of twelve
 * megapixels would need more memory than the bench has.
 */
final class FlatPng {
  private static final int HEADER_BYTES = 13;
  private static final int GREY_ALPHA = 4;
  private static final int COLOR_ALPHA = 6;
  private static final int MAX_SIDE = 100_000;
  private static final int WHITE = 255;

  private final PngChunks chunks;
  private final int width;
  private final int height;
  private final int colors;
  private final int sampleBytes;

  private FlatPng(PngChunks chunks, ByteBuffer header) {
    this.chunks = chunks;
    this.width = header.getInt(0);
    this.height = header.getInt(4);
    this.sampleBytes = header.get(8) / 8;
    this.colors = header.get(9) == GREY_ALPHA ? 1 : 3;
  }

  /**
   * Looks at a file.
   *
   * @param png the file
   * @return empty if it is no PNG with transparency for each dot, or is interlaced
   */
  static Optional<FlatPng> of(byte[] png) {
    PngChunks chunks = PngChunks.of(png);
    return chunks
        .first("IHDR", HEADER_BYTES)
        .filter(FlatPng::isSeeThrough)
        .map(header -> new FlatPng(chunks, header));
  }

  private static boolean isSeeThrough(ByteBuffer header) {
    int depth = header.get(8);
    int color = header.get(9);
    boolean interlaced = header.get(12) != 0;
    return isSide(header.getInt(0))
        && isSide(header.getInt(4))
        && (depth == 8 || depth == 16)
        && (color == GREY_ALPHA || color == COLOR_ALPHA)
        && !interlaced;
  }

  private static boolean isSide(int dots) {
    return dots > 0 && dots <= MAX_SIDE;
  }

  /** Puts it into a document. */
  PDImageXObject in(PDDocument document) throws IOException {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (InputStream rows = new InflaterInputStream(content());
        OutputStream out = new DeflaterOutputStream(packed)) {
      flatten(rows, out);
    }
    return new PDImageXObject(
        document,
        new ByteArrayInputStream(packed.toByteArray()),
        COSName.FLATE_DECODE,
        width,
        height,
        8,
        colors == 1 ? PDDeviceGray.INSTANCE : PDDeviceRGB.INSTANCE);
  }

  private InputStream content() {
    return new SequenceInputStream(
        Collections.enumeration(
            chunks.all("IDAT").stream()
                .map(one -> new ByteArrayInputStream(chunks.bytes(), one.from(), one.size()))
                .toList()));
  }

  private void flatten(InputStream rows, OutputStream out) throws IOException {
    int step = (colors + 1) * sampleBytes;
    byte[] before = new byte[width * step];
    byte[] flat = new byte[width * colors];
    for (int y = 0; y < height; y++) {
      int filter = rows.read();
      byte[] row = rows.readNBytes(before.length);
      if (filter < 0 || row.length < before.length) {
        throw new IOException("the picture ends in its middle");
      }
      PngFilter.undo(filter, row, before, step);
      onWhite(row, step, flat);
      out.write(flat);
      before = row;
    }
  }

  private void onWhite(byte[] row, int step, byte[] flat) {
    for (int x = 0; x < width; x++) {
      int opacity = row[x * step + colors * sampleBytes] & 0xff; // of 16 bits the upper eight
      for (int c = 0; c < colors; c++) {
        int color = row[x * step + c * sampleBytes] & 0xff;
        int mixed = (color * opacity + WHITE * (WHITE - opacity) + WHITE / 2) / WHITE;
        flat[x * colors + c] = (byte) mixed;
      }
    }
  }
}
