package org.lehrcase.core.seal;

import java.io.Closeable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;

/** Where sealed bytes go, written by position and by several threads. */
interface SealTarget extends Closeable {
  /** Writes all of {@code bytes} at {@code position}. */
  void writeAt(long position, ByteBuffer bytes) throws IOException;

  /** Brings everything written so far to the medium. */
  void force() throws IOException;

  /**
   * Returns a target over a new file; an existing one is never written to.
   *
   * @param file its name
   * @param sizeBytes how long it will be
   */
  static SealTarget newFile(Path file, long sizeBytes) throws IOException {
    return FileTarget.create(file, sizeBytes);
  }

  /** Returns a target over an array of the size of the part file. */
  static SealTarget array(byte[] sealed) {
    return new SealTarget() {
      @Override
      public void writeAt(long position, ByteBuffer bytes) {
        bytes.get(sealed, Math.toIntExact(position), bytes.remaining());
      }

      @Override
      public void force() {}

      @Override
      public void close() {}
    };
  }
}
