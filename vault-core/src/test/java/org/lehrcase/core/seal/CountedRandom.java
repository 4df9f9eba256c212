package org.lehrcase.core.seal;

import java.security.SecureRandom;

/** A source of no randomness at all, for vectors only: bytes counted up. */
final class CountedRandom extends SecureRandom {
  private static final long serialVersionUID = 1L;

  private int next;

  CountedRandom(int first) {
    this.next = first;
  }

  @Override
  public void nextBytes(byte[] bytes) {
    for (int i = 0; i < bytes.length; i++) {
      bytes[i] = (byte) next++;
    }
  }
}
