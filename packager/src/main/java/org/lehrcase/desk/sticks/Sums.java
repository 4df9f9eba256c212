package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.MessageDigest;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;

/** SHA-256 of files, read piece by piece into one piece of memory; for one thread. */
final class Sums {
  private static final int CHUNK_BYTES = 1 << 20;

  /** On bounds that reading past the cache asks for on every usual stick. */
  private final ByteBuffer room =
      ByteBuffer.allocateDirect(2 * CHUNK_BYTES).alignedSlice(CHUNK_BYTES).limit(CHUNK_BYTES);

  /** What was read: the hash, how much, and whether it came from the medium itself. */
  record Sum(Octets sha256, long bytes, boolean pastTheCache) {
    boolean is(StickFile file) {
      return bytes == file.bytes() && sha256.equals(file.sum());
    }
  }

  /** The memory, for whoever reads between two sums. */
  ByteBuffer room() {
    return room.clear().limit(CHUNK_BYTES);
  }

  Sum of(ReadableByteChannel in) throws IOException {
    return read(in, Long.MAX_VALUE, false);
  }

  /** Reads a file of a stick, past the cache where that can be had. */
  Sum ofStick(StickDisk disk, Path file) throws IOException {
    try {
      return read(disk, file, true);
    } catch (IOException | UnsupportedOperationException e) {
      return read(disk, file, false); // a stick that fails fails here too
    }
  }

  static boolean isFile(Path file) {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
  }

  private Sum read(StickDisk disk, Path file, boolean pastTheCache) throws IOException {
    long size = Files.size(file);
    try (ReadableByteChannel in = disk.read(file, pastTheCache)) {
      return read(in, size, pastTheCache);
    }
  }

  /** Ends at the size that was told: behind it a position is on no bound any more. */
  private Sum read(ReadableByteChannel in, long size, boolean pastTheCache) throws IOException {
    MessageDigest digest = Sha256.start();
    long bytes = 0;
    while (bytes < size) {
      int got = in.read(room());
      if (got < 0) {
        break;
      }
      bytes += got;
      digest.update(room.flip());
    }
    return new Sum(Octets.of(digest.digest()), bytes, pastTheCache);
  }
}
