package org.lehrcase.bench.web;

import java.util.Arrays;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.jspecify.annotations.Nullable;

/** A few arrays for clear segments, used again and again, zeroed when given back. */
final class SegmentBuffers {
  private static final int KEPT = 8;

  private final BlockingQueue<byte[]> idle = new ArrayBlockingQueue<>(KEPT);

  byte[] take(int bytes) {
    byte @Nullable [] kept = idle.poll();
    return kept != null && kept.length >= bytes ? kept : new byte[bytes];
  }

  void giveBack(byte[] buffer) {
    Arrays.fill(buffer, (byte) 0);
    boolean kept = idle.offer(buffer);
    assert kept || idle.remainingCapacity() == 0;
  }
}
