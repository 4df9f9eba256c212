package org.lehrcase.desk.media;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.seal.ByteSource;

/** Shows stretches of a file and of memory, one after the other, as one source. */
final class SplicedSource implements ByteSource {
  /**
   * One stretch.
   *
   * @param memory the bytes, or null if they are the file's
   * @param fileStart where the stretch begins in the file
   * @param sizeBytes its length
   */
  record Piece(byte @Nullable [] memory, long fileStart, long sizeBytes) {
    static Piece ofFile(long start, long sizeBytes) {
      return new Piece(null, start, sizeBytes);
    }

    static Piece ofMemory(byte[] bytes) {
      return new Piece(bytes, 0, bytes.length);
    }
  }

  private final ByteSource file;
  private final List<Piece> pieces = new ArrayList<>();
  private final long sizeBytes;

  SplicedSource(ByteSource file, List<Piece> pieces) {
    this.file = file;
    var sum = 0L;
    for (var piece : pieces) {
      if (piece.sizeBytes() > 0) {
        this.pieces.add(piece);
        sum += piece.sizeBytes();
      }
    }
    this.sizeBytes = sum;
  }

  @Override
  public long sizeBytes() {
    return sizeBytes;
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    var within = position;
    for (var piece : pieces) {
      if (within < piece.sizeBytes()) {
        return read(piece, within, target);
      }
      within -= piece.sizeBytes();
    }
    return -1;
  }

  private int read(Piece piece, long within, ByteBuffer target) throws IOException {
    var count = (int) Math.min(target.remaining(), piece.sizeBytes() - within);
    var memory = piece.memory();
    if (memory != null) {
      target.put(memory, (int) within, count);
      return count;
    }
    var limit = target.limit();
    target.limit(target.position() + count);
    try {
      return file.readAt(piece.fileStart() + within, target);
    } finally {
      target.limit(limit);
    }
  }

  @Override
  public void close() throws IOException {
    file.close();
  }
}
