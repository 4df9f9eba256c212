package org.lehrcase.bench.printing;

import java.io.IOException;

/** The five ways in which a PNG predicts a row from what stands left and above (9.2 there). */
final class PngFilter {
  private PngFilter() {}

  /**
   * Turns a row's differences into its bytes, in place.
   *
   * @param type 0 to 4, the octet before the row
   * @param row the differences
   * @param above the row above; zeros for the first
   * @param step octets of a dot
   * @throws IOException if there is no such way
   */
  static void undo(int type, byte[] row, byte[] above, int step) throws IOException {
    for (int i = 0; i < row.length; i++) {
      int left = i < step ? 0 : row[i - step] & 0xff;
      int up = above[i] & 0xff;
      int corner = i < step ? 0 : above[i - step] & 0xff;
      int predicted =
          switch (type) {
            case 0 -> 0;
            case 1 -> left;
            case 2 -> up;
            case 3 -> (left + up) / 2;
            case 4 -> nearest(left, up, corner);
            default -> throw new IOException("the picture has rows of an unknown kind");
          };
      row[i] += (byte) predicted;
    }
  }

  /** The one of the three that is nearest to left + up - corner; left before up before corner. */
  private static int nearest(int left, int up, int corner) {
    int estimate = left + up - corner;
    int toLeft = Math.abs(estimate - left);
    int toUp = Math.abs(estimate - up);
    int toCorner = Math.abs(estimate - corner);
    if (toLeft <= toUp && toLeft <= toCorner) {
      return left;
    }
    return toUp <= toCorner ? up : corner;
  }
}
