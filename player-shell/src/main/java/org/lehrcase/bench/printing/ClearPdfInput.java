package org.lehrcase.bench.printing;

import java.io.IOException;
import java.nio.ByteBuffer;
import org.apache.pdfbox.io.RandomAccessRead;
import org.apache.pdfbox.io.RandomAccessReadView;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.ClearSource;

/** Lets the PDF library read clear bytes where they are, without a copy of the file. */
final class ClearPdfInput implements RandomAccessRead {
  private final ClearSource source;
  private long position;
  private boolean closed;

  ClearPdfInput(ClearSource source) {
    this.source = source;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 1 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] target, int offset, int length) throws IOException {
    if (length == 0) {
      return 0;
    }
    try {
      int read = source.readAt(position, ByteBuffer.wrap(target, offset, length));
      position += Math.max(0, read);
      return read;
    } catch (VaultException e) {
      throw new IOException("the paper is damaged in this copy", e);
    }
  }

  @Override
  public long getPosition() {
    return position;
  }

  @Override
  public void seek(long to) throws IOException {
    if (to < 0) {
      throw new IOException("a position below 0");
    }
    position = Math.min(to, source.sizeBytes());
  }

  @Override
  public long length() {
    return source.sizeBytes();
  }

  @Override
  public boolean isClosed() {
    return closed;
  }

  @Override
  public boolean isEOF() {
    return position >= source.sizeBytes();
  }

  @Override
  public RandomAccessReadView createView(long start, long length) {
    return new RandomAccessReadView(new ClearPdfInput(source), start, length);
  }

  @Override
  public void close() {
    closed = true; // the source belongs to the course
  }
}
