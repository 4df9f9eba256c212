package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.concurrent.atomic.AtomicInteger;

/** A medium in memory that is full, or breaks, at one of its writes or when it is forced. */
final class FailingTarget implements SealTarget {
  private final byte[] bytes;
  private final int failingStep;
  private final AtomicInteger steps = new AtomicInteger();
  private volatile boolean forced;

  /** Fails at the step with this number, counted from 1; forcing is a step too. */
  FailingTarget(int size, int failingStep) {
    this.bytes = new byte[size];
    this.failingStep = failingStep;
  }

  private void step() throws IOException {
    if (steps.incrementAndGet() == failingStep) {
      throw new IOException("No space left on device");
    }
  }

  @Override
  public void writeAt(long position, ByteBuffer target) throws IOException {
    step();
    target.get(bytes, Math.toIntExact(position), target.remaining());
  }

  @Override
  public void force() throws IOException {
    step();
    forced = true;
  }

  boolean forced() {
    return forced;
  }

  byte[] bytes() {
    return bytes.clone();
  }

  @Override
  public void close() {}
}
