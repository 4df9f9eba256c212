package org.lehrcase.core.seal;

import java.io.Closeable;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;

/**
 * Bytes of fixed length that can be read at any position: a file, a slice of one, an array.
 *
 * <p>There is no cursor, and an implementation must bear many threads at once. Whoever opens one
 * closes it.
 */
public interface ByteSource extends Closeable {
  /** Returns the length in bytes, as it was at opening. */
  long sizeBytes();

  /**
   * Reads some bytes at {@code position} into what remains of {@code target}.
   *
   * @param position from 0
   * @return bytes read, which may be fewer than asked for; -1 if {@code position} is at or past the
   *     end
   * @throws IOException if the medium fails
   */
  int readAt(long position, ByteBuffer target) throws IOException;

  /**
   * Fills what remains of {@code target}, however short the single reads are.
   *
   * @throws EOFException if the source ends before that
   * @throws IOException if the medium fails
   */
  default void readExactly(long position, ByteBuffer target) throws IOException {
    long at = position;
    while (target.hasRemaining()) {
      int read = readAt(at, target);
      if (read < 0) {
        throw new EOFException("ended at " + at + ", " + target.remaining() + " bytes missing");
      }
      at += read;
    }
  }

  /**
   * Returns a view of {@code size} bytes from {@code from}; closing the view leaves this one open.
   *
   * @throws IllegalArgumentException if the range is not inside this source
   */
  default ByteSource slice(long from, long size) {
    return new SliceSource(this, from, size);
  }

  /** Returns a source over {@code bytes}, which must not change as long as it is read. */
  static ByteSource of(byte[] bytes) {
    return new ArraySource(bytes);
  }
}
