package org.lehrcase.desk.pack;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.primitive.Hmac;
import org.lehrcase.core.primitive.KeyWrap;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * Protects what packing remembers in the desk's home: wraps part keys and marks lines, so that a
 * torn or changed line is noticed. Derived from the first master key; never leaves the desk.
 */
final class MemoryKey implements AutoCloseable {
  private static final int KEY_BYTES = 32;
  private static final int MARK_BYTES = 8;

  private final SecretBytes wrapping;
  private final SecretBytes marking;

  private MemoryKey(SecretBytes both) {
    this.wrapping = both.slice(0, KEY_BYTES);
    this.marking = both.slice(KEY_BYTES, 2 * KEY_BYTES);
  }

  static MemoryKey of(MasterKey first) {
    try (SecretBytes both = first.packMemory()) {
      return new MemoryKey(both);
    }
  }

  Octets wrap(PartKey key) {
    return Octets.of(wrapping.use(kek -> key.use(clear -> KeyWrap.wrap(kek, clear))));
  }

  PartKey unwrap(Octets wrapped) throws VaultException.Tampered {
    byte[] kek = wrapping.use(byte[]::clone);
    byte[] clear = {};
    try {
      clear = KeyWrap.unwrap(kek, wrapped.toBytes());
      return PartKey.ofBytes(clear);
    } finally {
      Arrays.fill(kek, (byte) 0);
      Arrays.fill(clear, (byte) 0);
    }
  }

  Octets mark(String line) {
    byte[] text = line.getBytes(StandardCharsets.UTF_8);
    return Octets.of(marking.use(key -> Hmac.sha256(key, text))).slice(0, MARK_BYTES);
  }

  @Override
  public void close() {
    wrapping.close();
    marking.close();
  }

  @Override
  public String toString() {
    return "MemoryKey[redacted]";
  }
}
