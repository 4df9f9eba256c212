package org.lehrcase.core.seal;

import java.io.Closeable;
import java.io.IOException;
import java.nio.channels.ClosedChannelException;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.AssetReader.PartOpener;

/** The place of one part in an asset: shut until it is touched, then open until it is closed. */
final class PartSlot implements Closeable {
  private final PartHeader header;
  private final PartOpener opener;
  private volatile Optional<PartReader> reader;
  private boolean closed;

  private PartSlot(PartHeader header, PartOpener opener, Optional<PartReader> reader) {
    this.header = header;
    this.opener = opener;
    this.reader = reader;
  }

  static PartSlot opened(PartReader reader) {
    return new PartSlot(reader.header(), number -> reader, Optional.of(reader));
  }

  static PartSlot shut(PartHeader header, PartOpener opener) {
    return new PartSlot(header, opener, Optional.empty());
  }

  /** Returns what is promised of the part, whether it is open or not. */
  PartHeader header() {
    return header;
  }

  /**
   * Returns the reader, opening it if nobody has yet; others who want the same part wait.
   *
   * @throws ClosedChannelException if the asset is closed
   */
  PartReader reader() throws IOException, VaultException {
    Optional<PartReader> found = reader;
    return found.isPresent() ? found.get() : opened();
  }

  private synchronized PartReader opened() throws IOException, VaultException {
    if (closed) {
      throw new ClosedChannelException();
    }
    if (reader.isEmpty()) {
      PartReader fresh = opener.open(header.part());
      if (!fresh.header().equals(header)) {
        fresh.close();
        throw new IllegalStateException("the opener gave another part than " + header.part());
      }
      reader = Optional.of(fresh);
    }
    return reader.get();
  }

  @Override
  public synchronized void close() throws IOException {
    closed = true;
    if (reader.isPresent()) {
      reader.get().close();
    }
  }
}
