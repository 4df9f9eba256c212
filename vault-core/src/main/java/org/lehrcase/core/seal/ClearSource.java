package org.lehrcase.core.seal;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.lehrcase.core.VaultException;

/**
 * Clear bytes of an opened asset, at any position, every one of them authenticated.
 *
 * <p>Safe for use by many threads. Clear bytes exist in memory only; nothing here writes them down.
 */
public interface ClearSource extends Closeable {
  /** Returns the clear length in bytes. */
  long sizeBytes();

  /**
   * Reads some clear bytes at {@code position} into what remains of {@code target}.
   *
   * @param position from 0
   * @return bytes read, at least 1 if {@code target} has room, which may be fewer than asked for;
   *     -1 if {@code position} is at or past the end
   * @throws VaultException.Tampered if the segment there is damaged; nothing of it is given out
   * @throws IOException if the medium fails
   */
  int readAt(long position, ByteBuffer target) throws IOException, VaultException;

  /** Returns the least size of an array for {@link #readSegment}. */
  default int bufferBytes() {
    return 1 << SegmentLayout.DEFAULT_LOG2;
  }

  /**
   * Opens the one segment that holds {@code position} and returns its clear bytes from there to its
   * end, laid into {@code buffer}: the way for a server, without a copy. What else the buffer holds
   * afterwards has no meaning.
   *
   * @param position 0 to {@code sizeBytes() - 1}
   * @param buffer at least {@link #bufferBytes} long, not used by another thread meanwhile
   * @return at least one byte
   * @throws VaultException.Tampered if the segment is damaged; {@code buffer} is then all zero
   * @throws IOException if the medium fails
   */
  default ByteBuffer readSegment(long position, byte[] buffer) throws IOException, VaultException {
    ByteBuffer view = ByteBuffer.wrap(buffer);
    int read = readAt(position, view);
    if (read < 1) {
      throw new IndexOutOfBoundsException("position " + position + " of " + sizeBytes());
    }
    return view.flip();
  }

  /**
   * Fills what remains of {@code target}.
   *
   * @throws IndexOutOfBoundsException if fewer bytes remain after {@code position}
   * @throws VaultException.Tampered if a segment is damaged; what was filled before it is good
   * @throws IOException if the medium fails
   */
  default void readExactly(long position, ByteBuffer target) throws IOException, VaultException {
    if (position < 0 || position > sizeBytes() - target.remaining()) {
      throw new IndexOutOfBoundsException(
          target.remaining() + " bytes at " + position + " of " + sizeBytes());
    }
    long at = position;
    while (target.hasRemaining()) {
      at += readAt(at, target);
    }
  }
}
