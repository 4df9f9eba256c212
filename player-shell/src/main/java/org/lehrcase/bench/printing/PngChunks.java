package org.lehrcase.bench.printing;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The chunks of a PNG as they lie in the file (PNG specification, 5.3); its end may be missing. */
final class PngChunks {
  private static final long SIGNATURE = 0x89504e470d0a1a0aL;
  private static final int SIGNATURE_BYTES = 8;
  private static final int LENGTH_AND_TYPE_BYTES = 8;
  private static final int SUM_BYTES = 4;

  private final byte[] png;
  private final List<Chunk> chunks = new ArrayList<>();

  private PngChunks(byte[] png) {
    this.png = png;
  }

  /** A chunk: its name, and where its content lies. */
  record Chunk(String type, int from, int size) {}

  /** Finds the chunks; none in a file that is no PNG. */
  static PngChunks of(byte[] png) {
    PngChunks found = new PngChunks(png);
    ByteBuffer file = ByteBuffer.wrap(png);
    if (png.length >= SIGNATURE_BYTES && file.getLong(0) == SIGNATURE) {
      found.walk(file);
    }
    return found;
  }

  private void walk(ByteBuffer file) {
    long at = SIGNATURE_BYTES;
    while (at + LENGTH_AND_TYPE_BYTES + SUM_BYTES <= png.length) {
      int start = (int) at;
      long size = Integer.toUnsignedLong(file.getInt(start));
      int from = start + LENGTH_AND_TYPE_BYTES;
      if (from + size + SUM_BYTES > png.length) {
        return; // cut off, or nonsense
      }
      String type = new String(png, start + Integer.BYTES, 4, StandardCharsets.US_ASCII);
      chunks.add(new Chunk(type, from, (int) size));
      at = from + size + SUM_BYTES;
    }
  }

  List<Chunk> all(String type) {
    return chunks.stream().filter(chunk -> chunk.type().equals(type)).toList();
  }

  /** The content of the first chunk of a name, if it is exactly so long. */
  Optional<ByteBuffer> first(String type, int size) {
    return all(type).stream()
        .limit(1)
        .filter(chunk -> chunk.size() == size)
        .map(chunk -> ByteBuffer.wrap(png, chunk.from(), size).slice())
        .findFirst();
  }

  byte[] bytes() {
    return png;
  }
}
