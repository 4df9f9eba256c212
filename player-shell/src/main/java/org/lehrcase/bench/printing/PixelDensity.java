package org.lehrcase.bench.printing;

import java.nio.ByteBuffer;
import java.util.Optional;

/**
 * How large a PNG says that it is, by its {@code pHYs} chunk (PNG specification, 11.3.5.3).
 *
 * @param acrossPerMetre dots in a metre along x
 * @param downPerMetre along y
 */
record PixelDensity(double acrossPerMetre, double downPerMetre) {
  /** What programs take when a file says nothing: 96 dots to the inch (CSS Values 3, 6.2). */
  static final PixelDensity ASSUMED = new PixelDensity(96 / 0.0254, 96 / 0.0254);

  private static final int DENSITY_BYTES = 9;
  private static final byte PER_METRE = 1;

  /**
   * Reads what a file states.
   *
   * @param png the file
   * @return empty if it states none, or only the form of its dots
   */
  static Optional<PixelDensity> of(byte[] png) {
    return PngChunks.of(png).first("pHYs", DENSITY_BYTES).flatMap(PixelDensity::stated);
  }

  private static Optional<PixelDensity> stated(ByteBuffer content) {
    long across = Integer.toUnsignedLong(content.getInt());
    long down = Integer.toUnsignedLong(content.getInt());
    boolean metres = content.get() == PER_METRE;
    return metres && across > 0 && down > 0
        ? Optional.of(new PixelDensity(across, down))
        : Optional.empty();
  }
}
