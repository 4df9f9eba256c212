package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.lehrcase.core.file.Medium;

/** A stick with faults: pulled at the n-th use, full, read-only, or smaller than it says. */
final class TestStick implements StickDisk, Medium {
  private final MountedDisk real = new MountedDisk();
  private int usesLeft = Integer.MAX_VALUE;
  private String fault = "Input/output error";
  private long free = Long.MAX_VALUE;
  private long realBytes = Long.MAX_VALUE;
  private boolean direct = true;
  private long position;
  private final Map<Path, Long> begins = new HashMap<>();

  static TestStick whole() {
    return new TestStick();
  }

  static TestStick pulledAfter(int goodUses) {
    TestStick stick = new TestStick();
    stick.usesLeft = goodUses;
    return stick;
  }

  static TestStick failing(int goodUses, String words) {
    TestStick stick = pulledAfter(goodUses);
    stick.fault = words;
    return stick;
  }

  static TestStick withRoomFor(long bytes) {
    TestStick stick = new TestStick();
    stick.free = bytes;
    return stick;
  }

  /** Takes every byte, and keeps the newest of them only: what came before reads as other bytes. */
  static TestStick fake(long realBytes) {
    TestStick stick = new TestStick();
    stick.realBytes = realBytes;
    return stick;
  }

  static TestStick withoutDirect() {
    TestStick stick = new TestStick();
    stick.direct = false;
    return stick;
  }

  boolean wasPulled() {
    return usesLeft < 0;
  }

  private void use(Path path) throws IOException {
    if (usesLeft-- <= 0) {
      usesLeft = -1;
      throw new FileSystemException(path.toString(), null, fault);
    }
  }

  @Override
  public Medium medium() {
    return this;
  }

  @Override
  public long freeBytes(Path stick) throws IOException {
    use(stick);
    return Math.min(free, real.freeBytes(stick));
  }

  @Override
  public long blockBytes(Path stick) {
    return 4096;
  }

  @Override
  public ReadableByteChannel read(Path file, boolean pastTheCache) throws IOException {
    if (pastTheCache && !direct) {
      throw new UnsupportedOperationException("no way past the cache");
    }
    use(file);
    ReadableByteChannel in = real.read(file, false);
    long begin = begins.getOrDefault(file, Long.MAX_VALUE);
    boolean lost = realBytes < Long.MAX_VALUE && begin < position - realBytes;
    return lost ? new Other(in) : in;
  }

  @Override
  public void forceNames(Path folder) throws IOException {
    use(folder);
  }

  @Override
  public void createFolder(Path folder) throws IOException {
    use(folder);
    SYSTEM.createFolder(folder);
  }

  @Override
  public Sink create(Path file) throws IOException {
    use(file);
    begins.put(file, position);
    return new FaultySink(file, SYSTEM.create(file));
  }

  @Override
  public Sink resume(Path file, long keptBytes) {
    throw new AssertionError("sticks are not resumed inside a file");
  }

  @Override
  public void move(Path from, Path to) throws IOException {
    use(to);
    SYSTEM.move(from, to);
    begins.put(to, begins.getOrDefault(from, Long.MAX_VALUE));
  }

  @Override
  public void delete(Path file) throws IOException {
    use(file);
    SYSTEM.delete(file);
  }

  /** Half of a write that fails is there. */
  private final class FaultySink implements Sink {
    private final Path file;
    private final Sink sink;

    FaultySink(Path file, Sink sink) {
      this.file = file;
      this.sink = sink;
    }

    @Override
    public void write(ByteBuffer bytes) throws IOException {
      position += bytes.remaining();
      ByteBuffer half = bytes.duplicate();
      half.limit(half.position() + half.remaining() / 2);
      sink.write(half);
      bytes.position(half.position());
      use(file);
      sink.write(bytes);
    }

    @Override
    public void force() throws IOException {
      use(file); // and no waiting for a real disk
    }

    @Override
    public void close() throws IOException {
      sink.close();
    }
  }

  /** Gives one other bit in every piece. */
  private record Other(ReadableByteChannel in) implements ReadableByteChannel {
    @Override
    public int read(ByteBuffer target) throws IOException {
      int from = target.position();
      int got = in.read(target);
      if (got > 0) {
        target.put(from, (byte) (target.get(from) ^ 1));
      }
      return got;
    }

    @Override
    public boolean isOpen() {
      return in.isOpen();
    }

    @Override
    public void close() throws IOException {
      in.close();
    }
  }
}
