package org.lehrcase.core.message;

import java.util.SplittableRandom;
import java.util.stream.LongStream;

/** Seeds of property tests, shown in the test's name; repeat one with -Dlehrcase.seed=… */
final class MessageSeeds {
  private MessageSeeds() {}

  static LongStream some(int count) {
    Long given = Long.getLong("lehrcase.seed");
    if (given != null) {
      return LongStream.of(given);
    }
    var random = new SplittableRandom();
    return LongStream.generate(() -> random.nextLong(1L << 48)).limit(count);
  }

  static byte[] bytes(SplittableRandom random, int size) {
    byte[] bytes = new byte[size];
    random.nextBytes(bytes);
    return bytes;
  }
}
