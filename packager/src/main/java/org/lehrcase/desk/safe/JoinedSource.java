package org.lehrcase.desk.safe;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import org.lehrcase.core.seal.ByteSource;

/** Several sources, one after the other, seen as one; closing it closes them all. */
final class JoinedSource implements ByteSource {
  private final List<ByteSource> sources;
  private final long[] starts;

  JoinedSource(List<ByteSource> sources) {
    this.sources = List.copyOf(sources);
    this.starts = new long[sources.size() + 1];
    for (int i = 0; i < sources.size(); i++) {
      starts[i + 1] = starts[i] + sources.get(i).sizeBytes();
    }
  }

  @Override
  public long sizeBytes() {
    return starts[sources.size()];
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException {
    for (int i = 0; i < sources.size(); i++) {
      if (position < starts[i + 1]) {
        long from = position - starts[i];
        return sources.get(i).slice(0, starts[i + 1] - starts[i]).readAt(from, target);
      }
    }
    return -1;
  }

  @Override
  public void close() throws IOException {
    IOException first = null;
    for (ByteSource source : sources) {
      try {
        source.close();
      } catch (IOException e) {
        first = first == null ? e : first;
      }
    }
    if (first != null) {
      throw first;
    }
  }
}
