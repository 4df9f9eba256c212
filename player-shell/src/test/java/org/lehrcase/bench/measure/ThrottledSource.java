package org.lehrcase.bench.measure;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;
import org.lehrcase.core.seal.ByteSource;

/**
 * A tired stick: one read at a time, each with a delay and a rate, and now and then a long pause.
 * Reads nothing ahead, which a real system would do, so it is rather worse than the stick.
 */
final class ThrottledSource implements ByteSource {
  private final ByteSource source;
  private final Medium medium;
  private final ReentrantLock busy = new ReentrantLock();
  private final SplittableRandom chance = new SplittableRandom(2);
  private long nextStallNanos;

  /**
   * How tired it is.
   *
   * @param megabytesPerSecond rate while a read runs
   * @param millisPerRead delay before each read
   * @param stallMillis length of a pause
   * @param stallEverySeconds mean time between two pauses; 0 for none
   */
  record Medium(int megabytesPerSecond, int millisPerRead, int stallMillis, int stallEverySeconds) {
    /** Reads four numbers with commas between them. */
    static Medium parse(String text) {
      String[] numbers = text.split(",", -1);
      return new Medium(
          Integer.parseInt(numbers[0]),
          Integer.parseInt(numbers[1]),
          Integer.parseInt(numbers[2]),
          Integer.parseInt(numbers[3]));
    }

    @Override
    public String toString() {
      return megabytesPerSecond + "," + millisPerRead + "," + stallMillis + "," + stallEverySeconds;
    }
  }

  ThrottledSource(ByteSource source, Medium medium) {
    this.source = source;
    this.medium = medium;
    this.nextStallNanos = afterNow();
  }

  /** Exponentially distributed, as pauses that know nothing of each other are. */
  private long afterNow() {
    double wait = -Math.log(1 - chance.nextDouble()) * medium.stallEverySeconds();
    return System.nanoTime() + (long) (wait * 1e9);
  }

  @Override
  public long sizeBytes() {
    return source.sizeBytes();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    busy.lock();
    try {
      if (medium.stallEverySeconds() > 0 && System.nanoTime() > nextStallNanos) {
        pause(TimeUnit.MILLISECONDS.toNanos(medium.stallMillis()));
        nextStallNanos = afterNow();
      }
      pause(TimeUnit.MILLISECONDS.toNanos(medium.millisPerRead()));
      int read = source.readAt(position, target);
      pause(Math.max(0, read) * 1000L / medium.megabytesPerSecond());
      return read;
    } finally {
      busy.unlock();
    }
  }

  private static void pause(long nanos) {
    long until = System.nanoTime() + nanos;
    for (long left = nanos; left > 0; left = until - System.nanoTime()) {
      LockSupport.parkNanos(left);
    }
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
