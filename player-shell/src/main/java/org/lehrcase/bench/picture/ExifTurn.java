package org.lehrcase.bench.picture;

/**
 * Finds tag 0x0112 in the first directory of an Exif block (JEITA CP-3451); 1 if it is not told.
 */
final class ExifTurn {
  private static final int TAG = 0x0112;
  private static final int SHORT = 3;
  private static final int MOST_ENTRIES = 500;

  private final byte[] file;
  private final int start;
  private final int end;
  private final boolean little;

  private ExifTurn(byte[] file, int start, int length) {
    this.file = file;
    this.start = start;
    this.end = start + length;
    this.little = HeaderReader.starts(file, start, "II");
  }

  static int of(byte[] file, int start, int length) {
    boolean known =
        HeaderReader.starts(file, start, "II*\0") || HeaderReader.starts(file, start, "MM\0*");
    return known && length >= 8 ? new ExifTurn(file, start, length).find() : 1;
  }

  private int find() {
    long directory = start + four(start + 4);
    if (directory + 2 > end) {
      return 1;
    }
    int count = Math.min(MOST_ENTRIES, two((int) directory));
    for (int i = 0; i < count; i++) {
      long entry = directory + 2 + 12L * i;
      if (entry + 12 > end) {
        return 1;
      }
      if (two((int) entry) == TAG && two((int) entry + 2) == SHORT) {
        int turn = two((int) entry + 8);
        return turn >= 1 && turn <= 8 ? turn : 1;
      }
    }
    return 1;
  }

  private int two(int place) {
    int big = HeaderReader.two(file, place);
    return little ? (big & 0xff) << 8 | big >> 8 : big;
  }

  private long four(int place) {
    return little ? two(place) | (long) two(place + 2) << 16 : HeaderReader.four(file, place);
  }
}
