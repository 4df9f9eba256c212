package org.lehrcase.bench.courses;

import java.nio.ByteBuffer;
import org.lehrcase.core.seal.ClearSource;

/** A small clear text that was made in memory. */
final class ClearBytes implements ClearSource {
  private final byte[] bytes;

  ClearBytes(byte[] bytes) {
    this.bytes = bytes;
  }

  @Override
  public long sizeBytes() {
    return bytes.length;
  }

  @Override
  public int readAt(long position, ByteBuffer target) {
    if (position >= bytes.length) {
      return -1;
    }
    int length = Math.min(target.remaining(), bytes.length - (int) position);
    target.put(bytes, (int) position, length);
    return length;
  }

  @Override
  public void close() {
    // nothing is held open
  }
}
