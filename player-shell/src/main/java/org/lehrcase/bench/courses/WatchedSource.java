package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.ByteBuffer;
import org.lehrcase.bench.trouble.MediumGoneException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

/** A clear source that says so when its stick goes away, so that it is looked for again. */
final class WatchedSource implements ClearSource {
  private final ClearSource source;
  private final String title;
  private final Runnable gone;

  WatchedSource(ClearSource source, String title, Runnable gone) {
    this.source = source;
    this.title = title;
    this.gone = gone;
  }

  @Override
  public long sizeBytes() {
    return source.sizeBytes();
  }

  @Override
  public int bufferBytes() {
    return source.bufferBytes();
  }

  @Override
  public int readAt(long position, ByteBuffer target) throws IOException, VaultException {
    try {
      return source.readAt(position, target);
    } catch (IOException e) {
      throw lost(e);
    }
  }

  @Override
  public ByteBuffer readSegment(long position, byte[] buffer) throws IOException, VaultException {
    try {
      return source.readSegment(position, buffer);
    } catch (IOException e) {
      throw lost(e);
    }
  }

  private IOException lost(IOException cause) {
    gone.run();
    return new MediumGoneException(title, cause);
  }

  @Override
  public void close() throws IOException {
    source.close();
  }
}
