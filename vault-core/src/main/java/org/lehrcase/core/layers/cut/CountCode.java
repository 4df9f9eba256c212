package org.lehrcase.core.layers.cut;

import java.util.stream.IntStream;

/**
 * How many of each piece, written as one number: 0 to the demand of the first, times one more than
 * the demand of the second, and so on.
 */
final class CountCode {
  private final int[] demand;
  private final int[] step;
  private final int size;
  private final int[][] counts;

  CountCode(int[] demand) {
    this.demand = demand.clone();
    this.step = new int[demand.length];
    int next = 1;
    for (int i = 0; i < demand.length; i++) {
      step[i] = next;
      next *= demand[i] + 1;
    }
    this.size = next;
    this.counts = new int[size][demand.length];
    for (int code = 0; code < size; code++) {
      for (int i = 0; i < demand.length; i++) {
        counts[code][i] = code / step[i] % (demand[i] + 1);
      }
    }
  }

  /** Returns how many numbers there would be; 0 or less if far too many. */
  static long sizeOf(int[] demand, long most) {
    long size = 1;
    for (int count : demand) {
      size *= count + 1L;
      if (size > most) {
        return 0;
      }
    }
    return size;
  }

  int size() {
    return size;
  }

  /** Returns how many pieces are wanted in all. */
  int pieces() {
    return IntStream.of(demand).sum();
  }

  /** Returns the number for one of a single piece. */
  int single(int piece) {
    return step[piece];
  }

  /** Adds, and lets go of what nobody asked for. */
  int sum(int one, int two) {
    int code = 0;
    for (int i = 0; i < demand.length; i++) {
      code += step[i] * Math.min(demand[i], counts[one][i] + counts[two][i]);
    }
    return code;
  }

  /** Says whether one has at least as many of everything. */
  boolean covers(int one, int two) {
    for (int i = 0; i < demand.length; i++) {
      if (counts[one][i] < counts[two][i]) {
        return false;
      }
    }
    return true;
  }
}
