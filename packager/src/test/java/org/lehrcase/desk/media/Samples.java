package org.lehrcase.desk.media;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.lehrcase.core.seal.ByteSource;

/** The films that {@code make-samples.sh} made, and small ones built by hand. */
final class Samples {
  static final List<String> FILMS =
      List.of(
          "index-at-end.mp4",
          "index-in-front.mp4",
          "in-fragments.mp4",
          "camera.mov",
          "wrong-box.mkv",
          "hevc-ten-bit.mp4",
          "avc-four-two-two.mp4",
          "avc-ten-bit.mp4",
          "sound-ac3.mp4",
          "sixty-frames.mp4",
          "too-large.mp4",
          "vp9-opus.webm");

  private Samples() {}

  static byte[] bytes(String name) {
    try (InputStream in =
        Objects.requireNonNull(Samples.class.getResourceAsStream("/media/" + name))) {
      return in.readNBytes(1 << 20);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static ByteSource film(String name) {
    return ByteSource.of(bytes(name));
  }

  static List<String> lines(String name) {
    return new String(bytes(name), StandardCharsets.UTF_8).lines().toList();
  }

  static byte[] contents(ByteSource source) throws IOException {
    var buffer = ByteBuffer.allocate((int) source.sizeBytes());
    source.readExactly(0, buffer);
    return buffer.array();
  }

  /** Builds a box of the given type around bodies. */
  static byte[] box(String type, byte[]... bodies) {
    var out = new ByteArrayOutputStream();
    var size = 8;
    for (var body : bodies) {
      size += body.length;
    }
    out.writeBytes(ints(size));
    out.writeBytes(type.getBytes(StandardCharsets.ISO_8859_1));
    for (var body : bodies) {
      out.writeBytes(body);
    }
    return out.toByteArray();
  }

  static byte[] ints(int... values) {
    var buffer = ByteBuffer.allocate(4 * values.length);
    for (var value : values) {
      buffer.putInt(value);
    }
    return buffer.array();
  }

  static byte[] joined(byte[]... pieces) {
    var out = new ByteArrayOutputStream();
    for (var piece : pieces) {
      out.writeBytes(piece);
    }
    return out.toByteArray();
  }

  /** Says a source is longer than what it holds, as a huge file would. */
  static ByteSource longer(byte[] head, long sizeBytes, long tailStart, byte[] tail) {
    return new ByteSource() {
      @Override
      public long sizeBytes() {
        return sizeBytes;
      }

      @Override
      public int readAt(long position, ByteBuffer target) {
        if (position >= sizeBytes) {
          return -1;
        }
        target.put(byteAt(position));
        return 1;
      }

      private byte byteAt(long position) {
        if (position < head.length) {
          return head[(int) position];
        }
        var inTail = position - tailStart;
        return inTail >= 0 && inTail < tail.length ? tail[(int) inTail] : 0;
      }

      @Override
      public void close() {}
    };
  }
}
