package org.lehrcase.core.layers.paper;

/**
 * A picture's format on another.
 *
 * @param scale by which the picture grows
 * @param widthMm of the picture afterwards
 * @param heightMm of the picture afterwards
 */
public record Format(double scale, double widthMm, double heightMm) {
  /** Returns the picture as large as it can be with nothing lost. */
  public static Format fit(double fromW, double fromH, double toW, double toH) {
    return scaled(Math.min(toW / fromW, toH / fromH), fromW, fromH);
  }

  /** Returns the picture as small as it can be with nothing left empty. */
  public static Format cover(double fromW, double fromH, double toW, double toH) {
    return scaled(Math.max(toW / fromW, toH / fromH), fromW, fromH);
  }

  private static Format scaled(double scale, double width, double height) {
    if (!(scale > 0 && Double.isFinite(scale))) {
      throw new IllegalArgumentException("a format has a width and a height");
    }
    return new Format(scale, width * scale, height * scale);
  }

  /** Returns the pixels that a print of a length needs. */
  public static int pixels(double mm, double perInch) {
    return (int) Math.ceil(mm / 25.4 * perInch - 1e-9);
  }

  /**
   * Returns how good so many pixels are on a length: 150 an inch serve for tracing, 100 for a value
   * study (common practice, no source).
   */
  public static Sharpness sharpness(int pixels, double mm) {
    double perInch = pixels / (mm / 25.4);
    if (perInch >= 150) {
      return Sharpness.GOOD;
    }
    return perInch >= 75 ? Sharpness.SOFT : Sharpness.TOO_SMALL;
  }

  /** How a picture will look on the template. */
  public enum Sharpness {
    /** Sharp enough to trace. */
    GOOD,
    /** Its lines are soft; outlines help. */
    SOFT,
    /** Only drawn outlines serve. */
    TOO_SMALL
  }

  /** Returns the place of a point in a picture that is seen from behind. */
  public static double mirrored(double xMm, double widthMm) {
    return widthMm - xMm;
  }
}
