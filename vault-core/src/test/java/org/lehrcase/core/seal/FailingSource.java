package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.concurrent.atomic.AtomicInteger;

/** A source that counts its reads, fails at one of them, and knows whether it was closed. */
final class FailingSource implements ByteSource {
  static final int NEVER = 0;

  private final ByteSource source;
  private final int failingRead;
  private final AtomicInteger reads = new AtomicInteger();
  private volatile long bytesRead;
  private volatile boolean closed;

  /** Fails at the read with this number, counted from 1. */
  FailingSource(ByteSource source, int failingRead) {
    this.source = source;
    this.failingRead = failingRead;
  }

  @Override
  public long sizeBytes() {
    return source.sizeBytes();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    if (reads.incrementAndGet() == failingRead) {
      throw new IOException("medium gone");
    }
    int read = source.readAt(position, target);
    synchronized (this) {
      bytesRead += Math.max(read, 0);
    }
    return read;
  }

  int reads() {
    return reads.get();
  }

  long bytesRead() {
    return bytesRead;
  }

  boolean closed() {
    return closed;
  }

  @Override
  public void close() throws IOException {
    closed = true;
    source.close();
  }
}
