package org.lehrcase.core.copies;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.lehrcase.core.seal.DigestList;

/**
 * Gives the segments of one part, each proven, from whatever candidate has it. Two copies that are
 * damaged in different places make one whole.
 */
final class SegmentSupply implements Closeable {
  /** So often may something far away be wrong before it is asked no more for this part. */
  private static final int PATIENCE = 3;

  /** Reading over so much is cheaper than asking again. */
  private static final long SKIP_BYTES = 1 << 20;

  private final DigestList digests;
  private final List<Stream> streams;
  private final Map<CopySource, IOException> failures = new LinkedHashMap<>();
  private final Set<CopySource> right = new HashSet<>();
  private boolean lied;

  SegmentSupply(DigestList digests, List<Sources.Offer> offers) {
    this.digests = digests;
    this.streams = offers.stream().map(Stream::new).toList();
  }

  /** Fills the buffer with a proven segment; false if nobody has it. */
  boolean fill(int segment, byte[] buffer, int size) {
    long start = (long) segment << digests.log2SegmentBytes();
    for (Stream stream : streams) {
      for (int attempt = 0; attempt < 2 && stream.isWorthAsking(); attempt++) {
        if (stream.tries(start, buffer, size) && matches(stream, segment, buffer, size)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean matches(Stream stream, int segment, byte[] buffer, int size) {
    if (digests.matches(segment, buffer, size)) {
      stream.misses = 0;
      right.add(stream.offer.source());
      return true;
    }
    lied |= !stream.offer.candidate().isGuess();
    stream.misses++;
    stream.close();
    return false;
  }

  /** Returns why each place failed last that failed. */
  Map<CopySource, IOException> failures() {
    return failures;
  }

  /** Returns the places that gave anything right. */
  Set<CopySource> right() {
    return right;
  }

  /** Says whether any place gave other bytes than those that were signed. */
  boolean lied() {
    return lied;
  }

  @Override
  public void close() {
    streams.forEach(Stream::close);
  }

  /** One candidate, read on as long as its segments follow each other. */
  private final class Stream {
    private final Sources.Offer offer;
    private @Nullable InputStream in;
    private long at;
    private int misses;

    Stream(Sources.Offer offer) {
      this.offer = offer;
    }

    boolean isWorthAsking() {
      return offer.candidate().isNear() || misses < PATIENCE;
    }

    boolean tries(long start, byte[] buffer, int size) {
      try {
        int read = open(start).readNBytes(buffer, 0, size);
        at += read;
        if (read == size) {
          return true;
        }
        misses++;
      } catch (NoSuchFileException e) {
        misses = PATIENCE;
      } catch (IOException e) {
        failures.put(offer.source(), e);
        misses++;
      }
      close();
      return false;
    }

    private InputStream open(long start) throws IOException {
      InputStream open = in;
      if (open != null && at <= start && start - at <= SKIP_BYTES) {
        open.skipNBytes(start - at);
        at = start;
        return open;
      }
      close();
      InputStream fresh = offer.candidate().from(start);
      in = fresh;
      at = start;
      return fresh;
    }

    void close() {
      InputStream open = in;
      in = null;
      if (open != null) {
        try {
          open.close();
        } catch (IOException e) {
          failures.put(offer.source(), e); // what was read is proven; only the place is in doubt
        }
      }
    }
  }
}
