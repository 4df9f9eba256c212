package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;

/** A range of another source, which stays the property of whoever opened it. */
final class SliceSource implements ByteSource {
  private final ByteSource whole;
  private final long from;
  private final long size;

  SliceSource(ByteSource whole, long from, long size) {
    if (from < 0 || size < 0 || from > whole.sizeBytes() - size) {
      throw new IllegalArgumentException(
          size + " bytes from " + from + " are not inside " + whole.sizeBytes());
    }
    this.whole = whole;
    this.from = from;
    this.size = size;
  }

  @Override
  public long sizeBytes() {
    return size;
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    if (position >= size) {
      return -1;
    }
    int limit = target.limit();
    int allowed = (int) Math.min(target.remaining(), size - position);
    target.limit(target.position() + allowed);
    try {
      return whole.readAt(from + position, target);
    } finally {
      target.limit(limit);
    }
  }

  @Override
  public void close() {}
}
