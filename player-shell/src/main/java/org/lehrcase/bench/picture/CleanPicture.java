package org.lehrcase.bench.picture;

import java.util.Arrays;

/** A picture that holds nothing but upright sRGB pixels: no camera, no place, no profile. */
public final class CleanPicture {
  private final int width;
  private final int height;
  private final int sourceWidth;
  private final int sourceHeight;
  private final byte[] jpeg;

  /**
   * Creates it.
   *
   * @param size pixels of the JPEG, width first
   * @param source pixels of the picture it came from, upright, width first
   * @param jpeg its octets
   */
  CleanPicture(int[] size, int[] source, byte[] jpeg) {
    this.width = size[0];
    this.height = size[1];
    this.sourceWidth = source[0];
    this.sourceHeight = source[1];
    this.jpeg = Arrays.copyOf(jpeg, jpeg.length);
  }

  /** Returns the pixels in a row. */
  public int width() {
    return width;
  }

  /** Returns the rows. */
  public int height() {
    return height;
  }

  /** Returns the pixels in a row that the picture had when it came, upright. */
  public int sourceWidth() {
    return sourceWidth;
  }

  /** Returns the rows that the picture had when it came, upright. */
  public int sourceHeight() {
    return sourceHeight;
  }

  /** Returns the picture as JPEG. */
  public byte[] jpeg() {
    return Arrays.copyOf(jpeg, jpeg.length);
  }
}
