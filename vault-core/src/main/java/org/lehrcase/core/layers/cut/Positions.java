package org.lehrcase.core.layers.cut;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * Where a cut is worth trying along one side: sums of piece sizes. Anything else can be pushed
 * towards the edge until it stands at such a sum (Herz 1972).
 */
final class Positions {
  private final int[] at;

  private Positions(int[] at) {
    this.at = at;
  }

  /** Returns all sums up to a length, 0 among them. */
  static Positions sums(List<Integer> lengths, int limit) {
    int step = lengths.stream().reduce(0, Positions::commonStep);
    if (step == 0) {
      return new Positions(new int[1]);
    }
    var reached = new BitSet(limit / step + 1);
    reached.set(0);
    for (int length : lengths.stream().distinct().toList()) {
      int by = length / step;
      for (int i = reached.nextSetBit(0);
          i >= 0 && i + by <= limit / step;
          i = reached.nextSetBit(i + 1)) {
        reached.set(i + by);
      }
    }
    return new Positions(reached.stream().map(i -> i * step).toArray());
  }

  private static int commonStep(int one, int two) {
    return BigInteger.valueOf(one).gcd(BigInteger.valueOf(two)).intValue();
  }

  int count() {
    return at.length;
  }

  int at(int index) {
    return at[index];
  }

  /** Returns the index of the greatest position that is not beyond a length. */
  int floor(int length) {
    int found = Arrays.binarySearch(at, length);
    return found >= 0 ? found : -found - 2;
  }

  /** Returns for two indexes the index of the greatest position within their difference. */
  int[][] differences() {
    int[][] floor = new int[at.length][];
    for (int i = 0; i < at.length; i++) {
      floor[i] = new int[i + 1];
      int back = i;
      for (int j = 0; j <= i; j++) {
        while (at[back] > at[i] - at[j]) {
          back--;
        }
        floor[i][j] = back;
      }
    }
    return floor;
  }
}
