package org.lehrcase.bench.courses;

import java.util.concurrent.atomic.AtomicLong;

/**
 * How long reads from one medium take, as a moving average, so that the server can move work on a
 * slow stick away from the few threads that serve everybody. Safe for many threads; approximate on
 * purpose.
 */
public final class MediumPace {
  private static final long SLOW_NANOS = 3_000_000L;
  private static final int WEIGHT = 8;

  private final AtomicLong averageNanos = new AtomicLong();

  /**
   * Notes one read.
   *
   * @param nanos how long it took, in nanoseconds
   */
  public void took(long nanos) {
    averageNanos.accumulateAndGet(nanos, (old, now) -> old + (now - old) / WEIGHT);
  }

  /**
   * Returns whether a read is likely to keep its thread waiting.
   *
   * @return true if reads took more than 3 ms on average
   */
  public boolean isSlow() {
    return averageNanos.get() > SLOW_NANOS;
  }
}
