package org.lehrcase.desk.media;

/**
 * The shape of each frame.
 *
 * @param width coded width in pixels
 * @param height coded height in pixels
 * @param bitDepth bits per sample, 0 if the file does not say
 * @param chroma the colour resolution
 * @param interlaced whether the frames may be woven from two half pictures, one after the other
 */
public record PictureFormat(
    int width, int height, int bitDepth, Chroma chroma, boolean interlaced) {
  /** Makes the format of whole frames. */
  public PictureFormat(int width, int height, int bitDepth, Chroma chroma) {
    this(width, height, bitDepth, chroma, false);
  }

  /** Returns the same format, interlaced if either source says so. */
  PictureFormat orInterlaced(boolean said) {
    return new PictureFormat(width, height, bitDepth, chroma, interlaced || said);
  }

  /** Tells whether the frame is larger than 1920 × 1080, lying or standing. */
  public boolean largerThanFullHd() {
    return Math.max(width, height) > 1920 || Math.min(width, height) > 1088;
  }
}
