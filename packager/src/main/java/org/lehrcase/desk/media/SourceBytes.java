package org.lehrcase.desk.media;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.lehrcase.core.seal.ByteSource;

/** Reads whole windows out of a source. */
final class SourceBytes {
  private SourceBytes() {}

  /**
   * Reads exactly {@code count} bytes.
   *
   * @throws MediaException if the source is shorter than that; nothing is allocated then
   */
  static Slice read(ByteSource source, long position, int count)
      throws IOException, MediaException {
    if (position < 0 || count < 0 || position > source.sizeBytes() - count) {
      throw MediaException.broken("the file ends at byte " + source.sizeBytes());
    }
    var buffer = ByteBuffer.allocate(count);
    while (buffer.hasRemaining()) {
      if (source.readAt(position + buffer.position(), buffer) < 0) {
        throw new EOFException("the file became shorter while it was read");
      }
    }
    return Slice.of(buffer.array());
  }
}
