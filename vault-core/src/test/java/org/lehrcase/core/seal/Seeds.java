package org.lehrcase.core.seal;

import java.util.SplittableRandom;
import java.util.stream.LongStream;

/**
 * Seeds of property tests: fresh in every build, shown in the name of the test, and repeatable with
 * {@code -Dlehrcase.seed=...}.
 */
final class Seeds {
  private Seeds() {}

  static LongStream some(int count) {
    Long given = Long.getLong("lehrcase.seed");
    if (given != null) {
      return LongStream.of(given);
    }
    var random = new SplittableRandom();
    return LongStream.generate(() -> random.nextLong(1L << 48)).limit(count);
  }
}
