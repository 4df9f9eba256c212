package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.SplittableRandom;

/** A source that gives fewer bytes than it was asked for, as files on slow media may. */
final class ShortReads implements ByteSource {
  private final ByteSource source;
  private final SplittableRandom random;

  ShortReads(ByteSource source, long seed) {
    this.source = source;
    this.random = new SplittableRandom(seed);
  }

  @Override
  public long sizeBytes() {
    return source.sizeBytes();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    int limit = target.limit();
    target.limit(target.position() + shorter(target.remaining()));
    try {
      return source.readAt(position, target);
    } finally {
      target.limit(limit);
    }
  }

  private synchronized int shorter(int wanted) {
    return wanted < 2 ? wanted : random.nextInt(1, wanted + 1);
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
