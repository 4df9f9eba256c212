package org.lehrcase.desk.cli;

import java.io.PrintWriter;
import java.util.function.LongSupplier;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.Sizes;

/** Says on standard error how a pack goes: at most one line a second, with rate and time left. */
final class PackProgress implements PackListener {
  private static final long NANOS = 1_000_000_000L;

  private final PrintWriter err;
  private final LongSupplier nanoTime;
  private final String before;
  private final long start;
  private long lastSaid;

  PackProgress(PrintWriter err, LongSupplier nanoTime) {
    this(err, nanoTime, "");
  }

  /** Puts a few words before every line, for several that go on at once. */
  PackProgress(PrintWriter err, LongSupplier nanoTime, String before) {
    this.err = err;
    this.before = before;
    this.nanoTime = nanoTime;
    this.start = nanoTime.getAsLong();
    this.lastSaid = start;
  }

  @Override
  public void say(String sentence) {
    err.println(before + sentence);
    err.flush();
  }

  @Override
  public void progress(long doneBytes, long totalBytes) {
    long now = nanoTime.getAsLong();
    boolean last = doneBytes >= totalBytes;
    if (now - lastSaid < NANOS && !last) {
      return;
    }
    lastSaid = now;
    double seconds = Math.max(1e-3, (now - start) / (double) NANOS);
    double rate = doneBytes / seconds;
    long percent = totalBytes == 0 ? 100 : doneBytes * 100 / totalBytes;
    String left =
        last || rate < 1
            ? ""
            : ", " + Sizes.time(Math.round((totalBytes - doneBytes) / rate)) + " left";
    say(
        percent
            + " % of "
            + Sizes.words(totalBytes)
            + ", "
            + Sizes.words(Math.round(rate))
            + "/s"
            + left);
  }
}
