package org.lehrcase.desk.author;

import java.util.OptionalInt;

/** Which stick a course needs. */
final class StickSize {
  private static final int[] SOLD_GB = {8, 16, 32, 64, 128, 256, 512, 1024, 2048};

  /** What remains of a stick's printed size once it is formatted. */
  private static final double USABLE = 0.93;

  /** The program for three systems, and room for the next corrections. */
  private static final long PROGRAM_BYTES = 500_000_000L;

  private StickSize() {}

  /** Returns the printed size in GB of the smallest stick; empty if none is sold. */
  static OptionalInt gigabytes(long courseBytes) {
    for (var size : SOLD_GB) {
      if (courseBytes + PROGRAM_BYTES <= size * 1e9 * USABLE) {
        return OptionalInt.of(size);
      }
    }
    return OptionalInt.empty();
  }

  static String words(long courseBytes) {
    var size = gigabytes(courseBytes);
    return size.isPresent() ? "a stick of " + size.getAsInt() + " GB" : "more than one stick";
  }
}
