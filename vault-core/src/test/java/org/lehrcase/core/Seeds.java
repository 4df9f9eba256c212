package org.lehrcase.core;

import java.util.SplittableRandom;
import java.util.stream.LongStream;

/**
 * Seeds of property tests: fresh in every build, shown in the name of the test, and repeatable with
 * {@code -Dlehrcase.seed=...}.
 */
public final class Seeds {
  private Seeds() {}

  /** Returns so many seeds, or the one that was asked for. */
  public static LongStream some(int count) {
    Long given = Long.getLong("lehrcase.seed");
    if (given != null) {
      return LongStream.of(given);
    }
    var random = new SplittableRandom();
    return LongStream.generate(() -> random.nextLong(1L << 48)).limit(count);
  }

  /** Returns bytes that a seed determines. */
  public static byte[] bytes(SplittableRandom random, int size) {
    byte[] bytes = new byte[size];
    random.nextBytes(bytes);
    return bytes;
  }
}
