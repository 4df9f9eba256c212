package org.lehrcase.core.keys;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.lehrcase.core.primitive.Hkdf;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * Every purpose that a key is derived for. The number in {@link #PREFIX} names the whole suite: a
 * second suite gets new labels.
 */
public enum KeyLabel {
  /** Root signing seed, from the root secret. */
  ROOT("root"),
  /** Master key of an epoch, from the root secret. */
  MASTER("master"),
  /** Closing key of an epoch, from the root secret. */
  CLOSING("closing"),
  /** Seed of the issue key, from the master key. */
  ISSUE("issue"),
  /** Key of one edition, from the master key. */
  EDITION("edition"),
  /** Public check value of an edition key. */
  EDITION_CHECK("edition check"),
  /** Key of an edition's sealed contents, from the edition key. */
  CONTENTS("contents"),
  /** Key of an edition's corrections, from the edition key. */
  CORRECTION("correction"),
  /** Key of an edition's search image, from the edition key. */
  SEARCH("search"),
  /** Wrapping key of an edition's closing row, from the closing key. */
  CLOSING_ROW("closing row"),
  /** Public check value of a closing key. */
  CLOSING_CHECK("closing check"),
  /** Newest license key, from the master key. */
  LICENSE("license"),
  /** The license key one generation earlier, from the one after it. */
  STEP("step"),
  /** Secret of one place of a license, from the master key. */
  PLACE("place"),
  /** Public check value of a place's keys. */
  PLACE_CHECK("place check"),
  /** Tag and wrapping key of a key row, from the license key. */
  KEY_ROW("key row"),
  /** Tag and wrapping key of a rekey row, from the place secret. */
  REKEY_ROW("rekey row"),
  /** The code that stands on a paper letter, from the issue key. */
  CODE("code"),
  /** Key of the proof that a card carries, from the code. */
  CODE_KEY("code key"),
  /** One trait of a laptop, stretched to a fixed length. */
  TRAIT("trait"),
  /** Wrapping key of a place's seed, from the laptop's secret. */
  PLACE_SEED("place seed"),
  /** Wrapping key of a place's keys, from the laptop's secret. */
  PLACE_KEYS("place keys"),
  /** X25519 private key of a card, from the place's seed. */
  CARD_SEAL("card seal"),
  /** What the desk remembers of its packing, from its first master key. */
  PACK_MEMORY("pack memory"),
  /** Key of one copy of a student's notebook, from the license key of generation 0. */
  NOTEBOOK("notebook"),
  /** Ed25519 seed of a card, from the place's seed. */
  CARD_SIGN("card sign");

  /** Stands before every label. */
  public static final String PREFIX = "lehrcase/1 ";

  private static final byte[] NO_SALT = {};

  private final String text;

  KeyLabel(String text) {
    this.text = text;
  }

  /** Returns prefix and purpose, as they enter the derivation. */
  public String text() {
    return PREFIX + text;
  }

  /**
   * Derives 32 bytes for this purpose.
   *
   * @param key the key to derive from
   * @param context fixed-length values, in the order that {@code docs/format.md} gives
   * @return the derived key
   */
  public SecretBytes derive(SecretBytes key, byte[]... context) {
    return derive(key, 32, context);
  }

  /**
   * Derives bytes for this purpose: HKDF-SHA-256 with empty salt and info = label ‖ 00 ‖ context.
   *
   * @param key the key to derive from
   * @param sizeBytes length of the result
   * @param context fixed-length values, in the order that {@code docs/format.md} gives
   * @return the derived key
   */
  public SecretBytes derive(SecretBytes key, int sizeBytes, byte[]... context) {
    byte[] info = info(context);
    return SecretBytes.taking(key.use(raw -> Hkdf.sha256(raw, NO_SALT, info, sizeBytes)));
  }

  /**
   * Returns what binds a derivation to its purpose.
   *
   * @param context fixed-length values
   * @return label ‖ 00 ‖ context
   */
  public byte[] info(byte[]... context) {
    ByteArrayOutputStream info = new ByteArrayOutputStream();
    info.writeBytes(text().getBytes(StandardCharsets.US_ASCII));
    info.write(0);
    for (byte[] piece : context) {
      info.writeBytes(piece);
    }
    return info.toByteArray();
  }
}
