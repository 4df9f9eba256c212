package org.lehrcase.core.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/**
 * A medium that fails at one of its steps: each folder, new file, write, force, move and deletion
 * is one. What was done before stays on the real disk below.
 */
public final class FailingMedium implements Medium {
  /** How it fails. */
  public enum Way {
    /** The medium is full: half of a write goes through, then an error; clearing up still works. */
    FULL,
    /** The power is gone: this step and every one after it does nothing. */
    POWER_GONE
  }

  /** Thrown in place of everything that would happen after the power is gone. */
  public static final class PowerGone extends RuntimeException {
    private static final long serialVersionUID = 1L;

    PowerGone() {
      super("the power is gone");
    }
  }

  private final Way way;
  private final int failingStep;
  private int steps;

  /** Fails at the step with this number, counted from 1; 0 for never. */
  public FailingMedium(Way way, int failingStep) {
    this.way = way;
    this.failingStep = failingStep;
  }

  /** Returns how many steps were begun. */
  public int steps() {
    return steps;
  }

  /** Says whether the failing step was reached. */
  public boolean failed() {
    return failingStep > 0 && steps >= failingStep;
  }

  /** Returns whether this step is the one that fails. */
  private boolean step() throws IOException {
    steps++;
    if (way == Way.POWER_GONE && failed()) {
      throw new PowerGone();
    }
    return steps == failingStep;
  }

  private void stepOrFail() throws IOException {
    if (step()) {
      throw full();
    }
  }

  private static IOException full() {
    return new IOException("No space left on device");
  }

  @Override
  public void createFolder(Path folder) throws IOException {
    stepOrFail();
    SYSTEM.createFolder(folder);
  }

  @Override
  public Sink create(Path file) throws IOException {
    stepOrFail();
    return new FailingSink(SYSTEM.create(file));
  }

  @Override
  public Sink resume(Path file, long keptBytes) throws IOException {
    stepOrFail();
    return new FailingSink(SYSTEM.resume(file, keptBytes));
  }

  @Override
  public void move(Path from, Path to) throws IOException {
    stepOrFail();
    SYSTEM.move(from, to);
  }

  @Override
  public void delete(Path file) throws IOException {
    stepOrFail();
    SYSTEM.delete(file);
  }

  private final class FailingSink implements Sink {
    private final Sink sink;

    FailingSink(Sink sink) {
      this.sink = sink;
    }

    @Override
    public void write(ByteBuffer bytes) throws IOException {
      if (step()) {
        ByteBuffer half = bytes.duplicate();
        half.limit(half.position() + half.remaining() / 2);
        sink.write(half);
        throw full();
      }
      sink.write(bytes);
    }

    /** Leaves out the real forcing, which only costs time here. */
    @Override
    public void force() throws IOException {
      stepOrFail();
    }

    @Override
    public void close() throws IOException {
      sink.close();
    }
  }
}
