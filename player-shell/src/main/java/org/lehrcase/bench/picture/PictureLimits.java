package org.lehrcase.bench.picture;

/** How large a picture may be, checked against what its header claims, before it is decoded. */
final class PictureLimits {
  /** Most octets of a file. */
  static final int MOST_BYTES = 64 << 20;

  /** Most pixels; the largest telephones of today have 200 million. */
  static final long MOST_PIXELS = 210_000_000;

  /** Longest side. */
  static final int MOST_SIDE = 32_000;

  /** Shortest side on which something can be drawn. */
  static final int LEAST_SIDE = 64;

  /** Longest side of what is kept: 250 mm at 250 pixels an inch. */
  static final int KEPT_SIDE = 2560;

  /** Samples that are held at once while decoding: 50 million pixels of three octets. */
  static final long MOST_SAMPLES = 150_000_000;

  private PictureLimits() {}

  /** Refuses what is too large or too small. */
  static void check(long width, long height) throws PictureRefusal {
    String size = width + " × " + height + " pixels";
    if (width < 1 || height < 1) {
      throw new PictureRefusal(
          "This picture says that it is " + size + ".",
          "Open it in another program, save it anew.");
    }
    if (width > MOST_SIDE || height > MOST_SIDE || width * height > MOST_PIXELS) {
      throw new PictureRefusal(
          "This picture says that it is "
              + size
              + "; at most 210 million pixels and 32,000 a side are opened.",
          "Save it smaller in another program: 3,000 pixels along the longer side are plenty.");
    }
    if (width < LEAST_SIDE || height < LEAST_SIDE) {
      throw new PictureRefusal(
          "This picture has " + size + ", too few to draw round anything.",
          "Choose one of 1,200 pixels or more along the longer side.");
    }
  }

  /** The refusal of a file that is too large. */
  static PictureRefusal tooManyBytes() {
    return new PictureRefusal(
        "This picture is larger than 64 MiB.",
        "Save it as JPEG in a picture program, or smaller: 3,000 pixels along the longer side are"
            + " plenty.");
  }

  /** Returns the step at which pixels are read, so that decoding stays within its memory. */
  static int step(long width, long height, int samplesPerPixel) {
    int step = 1;
    while (((width + step - 1) / step) * ((height + step - 1) / step) * samplesPerPixel
        > MOST_SAMPLES) {
      step++;
    }
    return step;
  }
}
