package org.lehrcase.desk.light;

import java.util.Locale;
import java.util.function.LongSupplier;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.Sizes;

/** Says how making light copies goes: at most one line in five seconds, with the time left. */
final class LightProgress {
  private static final long NANOS = 1_000_000_000L;
  private static final long EVERY_SECONDS = 5;

  private final PackListener listener;
  private final LongSupplier nanoTime;
  private final double totalSeconds;
  private final long start;
  private long lastSaid;
  private double doneSeconds;

  /**
   * Begins to count.
   *
   * @param listener told
   * @param nanoTime a clock that only goes forward
   * @param totalSeconds length of all films to be made
   */
  LightProgress(PackListener listener, LongSupplier nanoTime, double totalSeconds) {
    this.listener = listener;
    this.nanoTime = nanoTime;
    this.totalSeconds = totalSeconds;
    this.start = nanoTime.getAsLong();
    this.lastSaid = start;
  }

  /** Takes note that a film is whole. */
  void finished(LightWork work) {
    doneSeconds += work.seconds();
  }

  /** Takes note of how far the copy of a film reaches. */
  void reached(LightWork work, long millis) {
    long now = nanoTime.getAsLong();
    if (now - lastSaid < EVERY_SECONDS * NANOS || totalSeconds <= 0) {
      return;
    }
    lastSaid = now;
    double done = doneSeconds + Math.min(millis / 1000.0, work.seconds());
    double spent = (now - start) / (double) NANOS;
    double left = done <= 0 ? 0 : spent / done * (totalSeconds - done);
    listener.say(
        String.format(
            Locale.ROOT,
            "light copies: %.0f %%, now %s, %s left",
            100 * done / totalSeconds,
            work.film().place(),
            Sizes.time(Math.round(left))));
  }
}
