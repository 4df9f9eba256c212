package org.lehrcase.desk.media;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.List;

/**
 * Copies an index with other chunk offsets (ISO/IEC 14496-12, 8.7.5). All else stays byte for byte,
 * except that box headers take their short form.
 */
final class IndexRewrite {
  /** Where one chunk goes. */
  @FunctionalInterface
  interface Offsets {
    long map(long offset) throws MediaException;
  }

  /** The boxes on the way to the chunk offsets; everything else is copied without a look inside. */
  private static final List<String> WAY = List.of("moov", "trak", "mdia", "minf", "stbl");

  private final Box moov;
  private final boolean wide;

  /**
   * Prepares a copy.
   *
   * @param wide whether 32-bit offsets become 64-bit ones
   */
  IndexRewrite(Box moov, boolean wide) {
    this.moov = moov;
    this.wide = wide;
  }

  byte[] apply(Offsets offsets) throws MediaException {
    return copy(moov, 0, offsets);
  }

  /** Copies a box; the way is five boxes deep, whatever the file nests. */
  private byte[] copy(Box box, int depth, Offsets offsets) throws MediaException {
    var step = WAY.indexOf(box.type());
    if (step >= 0 && step != depth) {
      throw MediaException.broken("box '" + box.type() + "' stands where it does not belong");
    }
    if (step >= 0) {
      return headed(box.whole().slice(4, 4).toBytes(), inside(box, depth + 1, offsets));
    }
    return switch (box.type()) {
      case "stco" -> table(box, 4, wide ? 8 : 4, offsets);
      case "co64" -> table(box, 8, 8, offsets);
      default -> headed(box.whole().slice(4, 4).toBytes(), box.body().toBytes());
    };
  }

  private byte[] inside(Box box, int depth, Offsets offsets) throws MediaException {
    var out = new ByteArrayOutputStream(box.body().size());
    var read = 0L;
    for (var child : box.children()) {
      out.writeBytes(copy(child, depth, offsets));
      read += child.whole().size();
    }
    out.writeBytes(box.body().from(read).toBytes());
    return out.toByteArray();
  }

  private static byte[] table(Box box, int oldWidth, int newWidth, Offsets offsets)
      throws MediaException {
    var body = box.body();
    var count = body.u32(4);
    var entries = body.slice(8, count * oldWidth);
    var out = ByteBuffer.allocate(Math.toIntExact(8 + count * newWidth));
    out.put(body.slice(0, 8).toBytes());
    for (var i = 0L; i < count; i++) {
      var at = i * oldWidth;
      var moved = offsets.map(oldWidth == 4 ? entries.u32(at) : entries.u64(at));
      if (newWidth == 4) {
        out.putInt((int) moved);
      } else {
        out.putLong(moved);
      }
    }
    var type = newWidth == 4 ? new byte[] {'s', 't', 'c', 'o'} : new byte[] {'c', 'o', '6', '4'};
    return headed(type, out.array());
  }

  private static byte[] headed(byte[] type, byte[] body) {
    var out = ByteBuffer.allocate(8 + body.length);
    return out.putInt(8 + body.length).put(type).put(body).array();
  }
}
