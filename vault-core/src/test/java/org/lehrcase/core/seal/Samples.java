package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.SplittableRandom;
import org.lehrcase.core.VaultException;

/** Clear bytes that every run makes anew, and the shortest way to read a source whole. */
final class Samples {
  private Samples() {}

  static byte[] clear(int size, long seed) {
    byte[] bytes = new byte[size];
    new SplittableRandom(seed).nextBytes(bytes);
    return bytes;
  }

  static byte[] all(ClearSource source) throws IOException, VaultException {
    byte[] clear = new byte[Math.toIntExact(source.sizeBytes())];
    source.readExactly(0, ByteBuffer.wrap(clear));
    return clear;
  }
}
