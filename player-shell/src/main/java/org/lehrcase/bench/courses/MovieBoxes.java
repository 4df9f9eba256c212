package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

/** Finds boxes of a film (ISO/IEC 14496-12, 4.2) by a handful of reads of a few bytes. */
final class MovieBoxes {
  private static final int MAX_BOXES = 200;
  private static final int SHORT_HEAD = 8;
  private static final int LONG_HEAD = 16;

  private final ClearSource film;

  /** A box: where its body begins and where it ends. */
  record Box(long body, long end) {
    long bodyBytes() {
      return end - body;
    }
  }

  MovieBoxes(ClearSource film) {
    this.film = film;
  }

  /** The film as one box. */
  Box whole() {
    return new Box(0, film.sizeBytes());
  }

  /** Returns the first box of a type, going down one name at a time; null if there is none. */
  @Nullable Box find(Box in, String... types) throws IOException, VaultException {
    @Nullable Box box = in;
    for (String type : types) {
      box = box == null ? null : next(type, box.body(), box.end());
    }
    return box;
  }

  /** Returns the next box of a type between two places; null if there is none. */
  @Nullable Box next(String type, long from, long to) throws IOException, VaultException {
    long at = from;
    for (int boxes = 0; boxes < MAX_BOXES && at + SHORT_HEAD <= to; boxes++) {
      ByteBuffer head = read(at, (int) Math.min(LONG_HEAD, to - at));
      long size = Integer.toUnsignedLong(head.getInt(0));
      int headBytes = SHORT_HEAD;
      if (size == 1 && head.limit() == LONG_HEAD) {
        size = head.getLong(SHORT_HEAD);
        headBytes = LONG_HEAD;
      } else if (size == 0) {
        size = to - at;
      }
      if (size < headBytes || size > to - at) {
        return null;
      }
      if (new String(head.array(), 4, 4, StandardCharsets.ISO_8859_1).equals(type)) {
        return new Box(at + headBytes, at + size);
      }
      at += size;
    }
    return null;
  }

  ByteBuffer read(long position, int length) throws IOException, VaultException {
    ByteBuffer target = ByteBuffer.allocate(length);
    while (target.hasRemaining()) {
      if (film.readAt(position + target.position(), target) <= 0) {
        throw new VaultException.Truncated("a film ends inside its index");
      }
    }
    return target.flip();
  }
}
