package org.lehrcase.desk.media;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lehrcase.core.seal.ByteSource;

/**
 * One box at the top of an MP4 file, not read into memory.
 *
 * @param type the four-character code
 * @param start position of its first byte in the file
 * @param headerBytes 8, or 16 with a 64-bit size
 * @param sizeBytes header and body
 */
record FileBox(String type, long start, int headerBytes, long sizeBytes) {
  /** More top boxes than this are refused: some 25 hours in one-second fragments. */
  static final int MAX_BOXES = 200_000;

  long end() {
    return start + sizeBytes;
  }

  /**
   * Lists the boxes at the top of a file. Up to seven stray bytes, or zeros, at the very end are
   * left out, as cameras leave them.
   *
   * @throws MediaException if a box runs past the end of the file
   */
  static List<FileBox> list(ByteSource source) throws IOException, MediaException {
    var boxes = new ArrayList<FileBox>();
    var at = 0L;
    while (source.sizeBytes() - at >= 8) {
      var box = at(source, at);
      if (box == null) {
        break;
      }
      boxes.add(box);
      at = box.end();
      if (boxes.size() > MAX_BOXES) {
        throw new MediaException(
            MediaException.Kind.TOO_LARGE, "more than " + MAX_BOXES + " boxes in the film");
      }
    }
    return boxes;
  }

  private static @org.jspecify.annotations.Nullable FileBox at(ByteSource source, long at)
      throws IOException, MediaException {
    var left = source.sizeBytes() - at;
    var head = SourceBytes.read(source, at, (int) Math.min(16, left));
    var size = head.u32(0);
    var type = head.fourcc(4);
    if (size == 0 && head.u32(4) == 0) {
      return null;
    }
    var header = 8;
    if (size == 1) {
      size = head.u64(8);
      header = 16;
    } else if (size == 0) {
      size = left;
    }
    if (size < header) {
      throw MediaException.broken("box '" + type + "' at byte " + at + " has no sensible size");
    }
    if (size > left) {
      throw MediaException.broken(
          String.format(
              Locale.ROOT,
              "the file ends at byte %d, but box '%s' at byte %d needs %d bytes; the copy is incomplete",
              source.sizeBytes(),
              type,
              at,
              size));
    }
    return new FileBox(type, at, header, size);
  }
}
