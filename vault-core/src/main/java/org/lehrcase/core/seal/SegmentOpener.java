package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import org.lehrcase.core.VaultException;

/**
 * One cipher with its two arrays, lent to one thread at a time. It keeps the clear segment that it
 * opened last, so that many small reads in a row open it once.
 */
final class SegmentOpener {
  private static final int NONE = -1;

  private final PartReader part;
  private final SegmentCipher cipher;
  private final byte[] sealed;
  private final byte[] clear;
  private int held = NONE;

  SegmentOpener(PartReader part, SegmentCipher cipher, int room) {
    this.part = part;
    this.cipher = cipher;
    this.sealed = new byte[room];
    this.clear = new byte[room];
  }

  /** Returns the array whose beginning holds the clear bytes of {@code segment}. */
  byte[] hold(int segment) throws IOException, VaultException {
    if (held != segment) {
      held = NONE;
      openInto(segment, clear);
      held = segment;
    }
    return clear;
  }

  /** Opens {@code segment} into the beginning of {@code target}, which is zeroed on failure. */
  void openInto(int segment, byte[] target) throws IOException, VaultException {
    int size = part.layout().sealedSize(segment);
    part.source().readExactly(part.layout().sealedStart(segment), ByteBuffer.wrap(sealed, 0, size));
    if (!part.digestAgrees(segment, sealed, size)) {
      Arrays.fill(target, (byte) 0);
      throw SegmentCipher.damaged(segment);
    }
    cipher.open(segment, sealed, target);
  }

  /** Forgets the clear bytes. */
  void wipe() {
    held = NONE;
    Arrays.fill(clear, (byte) 0);
  }
}
