package org.lehrcase.bench.picture;

import java.util.Optional;

/**
 * What a picture says about itself.
 *
 * @param kind its format
 * @param width stored pixels in a row
 * @param height stored rows
 * @param exifTurn the Exif orientation, 1 to 8
 * @param ink how the numbers of a JPEG are meant
 * @param profile the embedded colour profile, not yet believed
 */
record PictureHeader(
    Kind kind, int width, int height, int exifTurn, Ink ink, Optional<byte[]> profile) {
  /** A format that is decoded here. */
  enum Kind {
    JPEG,
    PNG
  }

  /** How the samples of a JPEG are to be read; a PNG says so itself. */
  enum Ink {
    GRAY,
    RGB,
    YCC,
    CMYK,
    YCCK
  }
}
