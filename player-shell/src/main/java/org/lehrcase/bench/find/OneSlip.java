package org.lehrcase.bench.find;

/** Whether two words differ by one slip of the fingers. */
final class OneSlip {
  private OneSlip() {}

  /**
   * Says whether one letter was changed, left out, added, or two neighbours changed places.
   *
   * @return false also if the words are the same
   */
  static boolean between(String one, String other) {
    int gap = one.length() - other.length();
    if (gap < -1 || gap > 1 || one.equals(other)) {
      return false;
    }
    int same = 0;
    int shorter = Math.min(one.length(), other.length());
    while (same < shorter && one.charAt(same) == other.charAt(same)) {
      same++;
    }
    if (gap > 0) {
      return tail(one, same + 1, other, same);
    }
    if (gap < 0) {
      return tail(one, same, other, same + 1);
    }
    return tail(one, same + 1, other, same + 1) || swapped(one, other, same);
  }

  private static boolean swapped(String one, String other, int at) {
    return at + 1 < one.length()
        && one.charAt(at) == other.charAt(at + 1)
        && one.charAt(at + 1) == other.charAt(at)
        && tail(one, at + 2, other, at + 2);
  }

  private static boolean tail(String one, int from, String other, int otherFrom) {
    int left = one.length() - from;
    return left == other.length() - otherFrom && one.regionMatches(from, other, otherFrom, left);
  }
}
