package org.lehrcase.desk.media;

/**
 * The shape of each frame.
 *
 * @param width coded width in pixels
 * @param height coded height in pixels
 * @param bitDepth bits per sample, 0 if the file does not say
 * @param chroma the colour resolution
 */
public record PictureFormat(int width, int height, int bitDepth, Chroma chroma) {
  /** Tells whether the frame is larger than 1920 × 1080, lying or standing. */
  public boolean largerThanFullHd() {
    return Math.max(width, height) > 1920 || Math.min(width, height) > 1088;
  }
}
