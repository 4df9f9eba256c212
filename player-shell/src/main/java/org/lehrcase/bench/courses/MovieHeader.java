package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

/**
 * Reads how long a film is from its movie header (ISO/IEC 14496-12, 8.2.2): a handful of reads of a
 * few bytes, wherever the index stands in the file.
 */
final class MovieHeader {
  private static final int MAX_BOXES = 200;
  private static final int SHORT_HEAD = 8;
  private static final int LONG_HEAD = 16;
  private static final int MAX_BODY = 32;
  private static final long UNKNOWN_32 = 0xffff_ffffL;

  private final ClearSource film;

  /** A box: where its body begins and where it ends. */
  private record Box(long body, long end) {}

  MovieHeader(ClearSource film) {
    this.film = film;
  }

  /** Returns the seconds; empty if the file is no such film or states no length. */
  OptionalDouble seconds() throws IOException, VaultException {
    @Nullable Box movie = find("moov", 0, film.sizeBytes());
    @Nullable Box header = movie == null ? null : find("mvhd", movie.body(), movie.end());
    if (header == null || header.end() - header.body() < MAX_BODY) {
      return OptionalDouble.empty();
    }
    ByteBuffer body = read(header.body(), MAX_BODY);
    boolean wide = body.get(0) == 1;
    long scale = Integer.toUnsignedLong(body.getInt(wide ? 20 : 12));
    long length = wide ? body.getLong(24) : Integer.toUnsignedLong(body.getInt(16));
    boolean stated = scale > 0 && length > 0 && (wide || length != UNKNOWN_32);
    return stated ? OptionalDouble.of((double) length / scale) : OptionalDouble.empty();
  }

  private @Nullable Box find(String type, long from, long to) throws IOException, VaultException {
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
      String found = new String(head.array(), 4, 4, StandardCharsets.ISO_8859_1);
      if (found.equals(type)) {
        return new Box(at + headBytes, at + size);
      }
      at += size;
    }
    return null;
  }

  private ByteBuffer read(long position, int length) throws IOException, VaultException {
    ByteBuffer target = ByteBuffer.allocate(length);
    while (target.hasRemaining()) {
      if (film.readAt(position + target.position(), target) <= 0) {
        throw new VaultException.Truncated("a film ends inside its index");
      }
    }
    return target.flip();
  }
}
