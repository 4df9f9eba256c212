package org.lehrcase.core.seal;

import java.nio.ByteBuffer;

/** A source over an array that the caller keeps unchanged. */
final class ArraySource implements ByteSource {
  private final byte[] bytes;

  ArraySource(byte[] bytes) {
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
    int at = Math.toIntExact(position);
    int count = Math.min(target.remaining(), bytes.length - at);
    target.put(bytes, at, count);
    return count;
  }

  @Override
  public void close() {}
}
