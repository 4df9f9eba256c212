package org.lehrcase.core.keys;

import org.lehrcase.core.id.Octets;

/** The salt of one issue of a keys file, fixed in length so that every derivation is injective. */
final class Salt {
  static final int BYTES = 16;

  private Salt() {}

  static byte[] checked(Octets salt) {
    if (salt.size() != BYTES) {
      throw new IllegalArgumentException("a salt needs 16 bytes, not " + salt.size());
    }
    return salt.toBytes();
  }
}
