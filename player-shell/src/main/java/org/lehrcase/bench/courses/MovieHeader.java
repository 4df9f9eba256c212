package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.lehrcase.bench.courses.MovieBoxes.Box;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

/** Reads how long a film is from its movie header (ISO/IEC 14496-12, 8.2.2). */
final class MovieHeader {
  private static final int MAX_BODY = 32;
  private static final long UNKNOWN_32 = 0xffff_ffffL;

  private final MovieBoxes boxes;

  MovieHeader(ClearSource film) {
    this.boxes = new MovieBoxes(film);
  }

  /** Returns the seconds; empty if the file is no such film or states no length. */
  OptionalDouble seconds() throws IOException, VaultException {
    @Nullable Box header = boxes.find(boxes.whole(), "moov", "mvhd");
    if (header == null || header.bodyBytes() < MAX_BODY) {
      return OptionalDouble.empty();
    }
    ByteBuffer body = boxes.read(header.body(), MAX_BODY);
    boolean wide = body.get(0) == 1;
    long scale = Integer.toUnsignedLong(body.getInt(wide ? 20 : 12));
    long length = wide ? body.getLong(24) : Integer.toUnsignedLong(body.getInt(16));
    boolean stated = scale > 0 && length > 0 && (wide || length != UNKNOWN_32);
    return stated ? OptionalDouble.of((double) length / scale) : OptionalDouble.empty();
  }
}
