package org.lehrcase.bench.fetching;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;

/** The body of an answer that is ended when it falls silent or only drips. */
final class PacedStream extends FilterInputStream {
  private static final long LOOK_MILLIS = 100;
  private static final ScheduledExecutorService WATCH =
      Executors.newSingleThreadScheduledExecutor(
          work -> {
            Thread thread = new Thread(work, "fetch-watch");
            thread.setDaemon(true);
            return thread;
          });

  private final WebSource.Limits limits;
  private final String label;
  private final ScheduledFuture<?> watch;
  private long waitedNanos;
  private long bytes;
  private volatile long readSince;
  private volatile boolean ended;

  PacedStream(InputStream body, WebSource.Limits limits, String label) {
    super(body);
    this.limits = limits;
    this.label = label;
    this.watch =
        WATCH.scheduleWithFixedDelay(this::look, LOOK_MILLIS, LOOK_MILLIS, TimeUnit.MILLISECONDS);
  }

  private void look() {
    long since = readSince;
    if (since != 0 && System.nanoTime() - since > limits.silence().toNanos()) {
      end();
    }
  }

  private void end() {
    ended = true;
    try {
      in.close(); // wakes the reader
    } catch (IOException e) {
      watch.cancel(false);
    }
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] target, int from, int size) throws IOException {
    long start = System.nanoTime() | 1; // 0 means: nobody waits
    readSince = start;
    int read;
    try {
      read = in.read(target, from, size);
    } catch (IOException e) {
      throw ended ? new IOException(label + " fell silent", e) : e;
    } finally {
      readSince = 0;
    }
    if (ended) {
      throw new IOException(label + " fell silent");
    }
    waitedNanos += System.nanoTime() - start;
    bytes += Math.max(0, read);
    requirePace();
    return read;
  }

  /** Only the time spent waiting counts, not what the reader does in between. */
  private void requirePace() throws IOException {
    if (waitedNanos > limits.grace().toNanos()
        && bytes < limits.bytesPerSecond() * TimeUnit.NANOSECONDS.toSeconds(waitedNanos)) {
      throw new IOException(label + " is too slow: " + bytes + " bytes came so far");
    }
  }

  @Override
  public long skip(long count) throws IOException {
    byte[] over = new byte[(int) Math.min(count, 1 << 16)];
    return count <= 0 ? 0 : Math.max(0, read(over, 0, over.length));
  }

  @Override
  public void close() throws IOException {
    watch.cancel(false);
    super.close();
  }
}
