package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;

/**
 * Reads farther than it was asked to, as long as its medium is slow and is read in order.
 *
 * <p>A tired stick takes as long to begin a reading as to give half a megabyte, so segments asked
 * for one by one leave it waiting most of the time. The first reading anywhere takes only what was
 * asked for, since somebody who jumps about waits for exactly that; each next one in order takes
 * twice as much, up to {@value #MAX_BYTES} bytes. What is held is sealed bytes, not yet checked by
 * anybody: whoever takes them checks them as if they came from the medium. A fast medium is read
 * directly, and a slow one that has become fast again too. Safe for many threads.
 */
final class ReadAheadSource implements ByteSource {
  static final int MAX_BYTES = 256 << 10;
  private static final int FIRST_BYTES = 128 << 10;
  private static final long SLOW_NANOS = 3_000_000L;

  private final ByteSource source;
  private final LongSupplier clock;
  private final ReentrantLock lock = new ReentrantLock();
  private volatile boolean slow;

  /** Held bytes, from index 0; what follows is guarded by the lock. */
  private ByteBuffer held = ByteBuffer.allocate(0);

  private long heldFrom;
  private long next = -1;
  private int step = FIRST_BYTES;

  ReadAheadSource(ByteSource source) {
    this(source, System::nanoTime);
  }

  /** Takes the time from {@code clock}, in nanoseconds. */
  ReadAheadSource(ByteSource source, LongSupplier clock) {
    this.source = source;
    this.clock = clock;
  }

  @Override
  public long sizeBytes() {
    return source.sizeBytes();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    if (!slow || !lock.tryLock()) {
      return directly(position, target);
    }
    try {
      int read = ahead(position, target);
      next = position + Math.max(0, read);
      return read;
    } finally {
      lock.unlock();
    }
  }

  private int directly(long position, ByteBuffer target) throws IOException {
    long began = clock.getAsLong();
    int read = source.readAt(position, target);
    slow = clock.getAsLong() - began > SLOW_NANOS;
    return read;
  }

  private int ahead(long position, ByteBuffer target) throws IOException {
    if (isHeld(position)) {
      return give(position, target);
    }
    if (position != next) {
      step = FIRST_BYTES;
      return directly(position, target);
    }
    if (fill(position)) {
      step = Math.min(2 * step, MAX_BYTES);
      return give(position, target);
    }
    return directly(position, target);
  }

  private boolean isHeld(long position) {
    return position >= heldFrom && position < heldFrom + held.limit();
  }

  private int give(long position, ByteBuffer target) {
    int from = (int) (position - heldFrom);
    int count = Math.min(target.remaining(), held.limit() - from);
    target.put(held.array(), from, count);
    return count;
  }

  /** Says whether there is something at {@code position} now; a bad spot farther on is no error. */
  private boolean fill(long position) {
    if (held.capacity() == 0) {
      held = ByteBuffer.allocate(MAX_BYTES);
    }
    held.clear().limit(step);
    heldFrom = position;
    try {
      int read = directly(position, held);
      held.flip();
      return read > 0;
    } catch (IOException e) {
      held.limit(0); // the reading that was asked for may still succeed
      return false;
    }
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
