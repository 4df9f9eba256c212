package org.lehrcase.core.keys;

import java.security.MessageDigest;
import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.KeyWrap;
import org.lehrcase.core.primitive.SecretBytes;

/** A row of a keys file: {@code tag 8 ‖ KW(kek, key 32)}, 48 bytes, made from 40 derived bytes. */
public final class KeyRow {
  /** Length of a row in bytes. */
  public static final int BYTES = 48;

  /** Length of the tag that a row is found by, in bytes. */
  public static final int TAG_BYTES = 8;

  /** Length of what a row is derived from, in bytes. */
  static final int DERIVED_BYTES = 40;

  private KeyRow() {}

  static Octets seal(SecretBytes derived, SecretBytes key) {
    byte[] row = new byte[BYTES];
    derived.lend(
        raw -> {
          byte[] kek = Arrays.copyOfRange(raw, TAG_BYTES, DERIVED_BYTES);
          byte[] wrapped = key.use(clear -> KeyWrap.wrap(kek, clear));
          System.arraycopy(raw, 0, row, 0, TAG_BYTES);
          System.arraycopy(wrapped, 0, row, TAG_BYTES, wrapped.length);
          Arrays.fill(kek, (byte) 0);
        });
    return Octets.of(row);
  }

  static Octets tag(SecretBytes derived) {
    return derived.use(raw -> Octets.of(Arrays.copyOf(raw, TAG_BYTES)));
  }

  static SecretBytes open(SecretBytes derived, Octets row) throws VaultException.Tampered {
    byte[] bytes = row.toBytes();
    byte[] tag = tag(derived).toBytes();
    if (bytes.length != BYTES || !MessageDigest.isEqual(tag, Arrays.copyOf(bytes, TAG_BYTES))) {
      throw new VaultException.Tampered("the key row is not for this key");
    }
    byte[] kek = derived.use(raw -> Arrays.copyOfRange(raw, TAG_BYTES, DERIVED_BYTES));
    try {
      return SecretBytes.taking(KeyWrap.unwrap(kek, Arrays.copyOfRange(bytes, TAG_BYTES, BYTES)));
    } finally {
      Arrays.fill(kek, (byte) 0);
    }
  }
}
