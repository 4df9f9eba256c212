package org.lehrcase.bench.help;

import com.sun.nio.file.ExtendedOpenOption;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.PartEntry;

/**
 * Reads a few megabytes of a sealed part to see how fast its stick is, past the system's cache
 * where the system allows that. What is read stays sealed and is dropped at once.
 */
public final class MediumSpeed {
  private static final int CHUNK_BYTES = 1 << 20;
  private static final int MAX_CHUNKS = 8;
  private static final int ALIGNMENT_BYTES = 4096;
  private static final long MAX_NANOS = 1_500_000_000L;
  private static final double NANOS_PER_SECOND = 1e9;
  private static final List<List<OpenOption>> WAYS =
      List.of(
          List.of(StandardOpenOption.READ, ExtendedOpenOption.DIRECT),
          List.of(StandardOpenOption.READ));

  private MediumSpeed() {}

  /**
   * Measures the medium of an edition, for at most about two seconds.
   *
   * @param folder the edition
   * @return octets a second; empty if no part of half a megabyte or more is here
   */
  public static OptionalLong bytesPerSecond(EditionFolder folder) {
    Optional<Path> largest =
        folder.frontPage().facts().parts().stream()
            .filter(part -> part.sealedBytes() >= CHUNK_BYTES / 2)
            .sorted(Comparator.comparing(PartEntry::sealedBytes).reversed())
            .flatMap(part -> folder.locate(part).stream())
            .findFirst();
    return largest.isPresent() ? ofFile(largest.get()) : OptionalLong.empty();
  }

  private static OptionalLong ofFile(Path file) {
    for (List<OpenOption> options : WAYS) {
      try {
        return OptionalLong.of(read(file, options));
      } catch (IOException | UnsupportedOperationException e) {
        continue; // this file system has no reading past the cache; the next way is the plain one
      }
    }
    return OptionalLong.empty();
  }

  private static long read(Path file, List<OpenOption> options) throws IOException {
    ByteBuffer room =
        ByteBuffer.allocateDirect(CHUNK_BYTES + ALIGNMENT_BYTES).alignedSlice(ALIGNMENT_BYTES);
    long start = System.nanoTime();
    long bytes = 0;
    try (FileChannel channel = FileChannel.open(file, options.toArray(new OpenOption[0]))) {
      for (int i = 0; i < MAX_CHUNKS && System.nanoTime() - start < MAX_NANOS; i++) {
        int read = channel.read(room.clear().limit(CHUNK_BYTES));
        bytes += Math.max(0, read);
        if (read < CHUNK_BYTES) {
          break; // the end; past the cache nothing can be read from a place off the blocks
        }
      }
    }
    return (long) (bytes * NANOS_PER_SECOND / Math.max(1, System.nanoTime() - start));
  }
}
