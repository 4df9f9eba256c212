package org.lehrcase.desk.sticks;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.channels.ReadableByteChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;

/**
 * A file that a stick is to hold.
 *
 * @param place its path on the stick, with slashes
 * @param origin where its bytes come from
 * @param bytes how many there are
 * @param sum their SHA-256
 */
record StickFile(String place, Origin origin, long bytes, Octets sum) {
  /** Gives the bytes, from the first, as often as asked. */
  @FunctionalInterface
  interface Origin {
    ReadableByteChannel open() throws IOException;
  }

  static StickFile text(String place, String content) {
    byte[] bytes = content.getBytes(StandardCharsets.UTF_8);
    return new StickFile(
        place,
        () -> Channels.newChannel(new ByteArrayInputStream(bytes)),
        bytes.length,
        Octets.of(Sha256.of(bytes)));
  }

  /** Reads a file of the desk's disk once, for its sum. */
  static StickFile of(String place, Path file, Sums sums) throws IOException {
    Origin origin =
        () -> FileChannel.open(file, Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS));
    try (ReadableByteChannel in = origin.open()) {
      Sums.Sum sum = sums.of(in);
      return new StickFile(place, origin, sum.bytes(), sum.sha256());
    }
  }
}
