package org.lehrcase.core.seal;

import com.sun.nio.file.ExtendedOpenOption;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/**
 * A new file, written past the system's cache where that can be had: the sealers then wait for the
 * medium one by one while the others go on, and nothing is left to be forced at the end. Groups of
 * segments begin and end on the blocks of every usual medium; what does not (the end of a part, a
 * medium of larger blocks) goes through the cache and is forced.
 */
final class FileTarget implements SealTarget {
  private final FileChannel cached;
  private final Optional<FileChannel> direct;
  private final int blockBytes;
  private final Queue<ByteBuffer> rooms = new ConcurrentLinkedQueue<>();

  private FileTarget(FileChannel cached, Optional<FileChannel> direct, int blockBytes) {
    this.cached = cached;
    this.direct = direct;
    this.blockBytes = blockBytes;
  }

  static FileTarget create(Path file, long sizeBytes) throws IOException {
    FileChannel cached =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    int blockBytes = blockBytes(file);
    boolean worthIt = blockBytes > 0 && sizeBytes >= SealRun.GROUP_BYTES;
    Optional<FileChannel> direct = worthIt ? direct(file) : Optional.empty();
    return new FileTarget(cached, direct, blockBytes);
  }

  private static int blockBytes(Path file) {
    try {
      return Math.toIntExact(Files.getFileStore(file).getBlockSize());
    } catch (IOException | UnsupportedOperationException | ArithmeticException e) {
      return 0; // not told: everything goes through the cache
    }
  }

  private static Optional<FileChannel> direct(Path file) {
    try {
      return Optional.of(
          FileChannel.open(file, StandardOpenOption.WRITE, ExtendedOpenOption.DIRECT));
    } catch (IOException | UnsupportedOperationException e) {
      return Optional.empty(); // a memory file system, for example, has nothing to go past
    }
  }

  @Override
  public void writeAt(long position, ByteBuffer bytes) throws IOException {
    long at = position + pastTheCache(position, bytes);
    while (bytes.hasRemaining()) {
      at += cached.write(bytes, at);
    }
  }

  /** Returns how much was written; the rest, and every refusal of the medium, is the cache's. */
  private int pastTheCache(long position, ByteBuffer bytes) {
    int size = bytes.remaining();
    if (direct.isEmpty() || position % blockBytes != 0 || size % blockBytes != 0) {
      return 0;
    }
    ByteBuffer aligned = takeRoom(size);
    try {
      aligned.put(bytes.duplicate()).flip();
      int written = direct.get().write(aligned, position);
      bytes.position(bytes.position() + written);
      return written;
    } catch (IOException e) {
      return 0; // a full or broken medium refuses the cache's writing too, or its forcing
    } finally {
      rooms.add(aligned);
    }
  }

  /** Memory on block bounds, as going past the cache asks for; one piece for each writer. */
  private ByteBuffer takeRoom(int size) {
    ByteBuffer room = rooms.poll();
    return room != null && room.capacity() >= size
        ? room.clear()
        : ByteBuffer.allocateDirect(size + blockBytes).alignedSlice(blockBytes).limit(size);
  }

  @Override
  public void force() throws IOException {
    cached.force(true);
  }

  @Override
  public void close() throws IOException {
    try (FileChannel first = cached) {
      if (direct.isPresent()) {
        direct.get().close();
      }
    }
  }
}
