package org.lehrcase.core.license;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.keys.ClosingKey;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * The closing keys that a shop publishes when it closes: {@code [1, [[epoch, key b32]…]]}. Not
 * signed: each proves itself by the check value in a front page, which the desk signed, and opens
 * nothing else.
 */
public final class ClosingNote {
  private static final int FIELDS = 2;
  private static final int KEY_BYTES = 32;
  private static final int MAX_KEYS = 64;
  private static final int MAX_EPOCH = 63;

  private ClosingNote() {}

  /**
   * Writes the file to publish.
   *
   * @param shop the name of the shop
   * @param keys its closing keys of all epochs
   * @return sentences above the keys
   */
  public static String text(String shop, List<ClosingKey> keys) {
    CborWriter note = new CborWriter().array(FIELDS).uint(1).array(keys.size());
    for (ClosingKey key : keys) {
      try (SecretBytes secret = key.secret()) {
        note.array(2).uint(key.epoch()).bytes(secret.use(byte[]::clone));
      }
    }
    String words =
        shop
            + " has closed. With this file every copy of its courses opens on any laptop, without a"
            + " license, for ever.\nWhat to do: drop it on the start page of Lehrcase, and bring in"
            + " the folder of a course. Pass it on with every copy.";
    return Armor.write(ArmorKind.CLOSING_KEY, words, note.toBytes());
  }

  /**
   * Reads what stands between the lines.
   *
   * @param bytes the bytes
   * @return the keys, owned by the caller
   * @throws VaultException if the form is not exact
   */
  public static List<ClosingKey> read(byte[] bytes) throws VaultException {
    CborReader fields = CborReader.of(bytes);
    fields.arrayOf(FIELDS);
    if (fields.uint(1) != 1) {
      throw new VaultException.UnsupportedVersion("a newer program wrote this closing key");
    }
    int count = fields.array(MAX_KEYS);
    List<ClosingKey> keys = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      fields.arrayOf(2);
      int epoch = fields.smallUint(MAX_EPOCH);
      byte[] key = fields.bytes(KEY_BYTES);
      if (key.length != KEY_BYTES) {
        throw new VaultException.Malformed("a closing key has another length");
      }
      try (SecretBytes secret = SecretBytes.taking(key)) {
        keys.add(ClosingKey.of(epoch, secret));
      }
    }
    fields.end();
    return List.copyOf(keys);
  }
}
