package org.lehrcase.core.keys;

import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.KeyWrap;
import org.lehrcase.core.primitive.SecretBytes;

/** The key that, once published, opens every edition of its epoch without a license. */
public final class ClosingKey implements AutoCloseable {
  /** Length of a closing row in bytes. */
  public static final int ROW_BYTES = 40;

  /** Length of the check value in bytes. */
  public static final int CHECK_BYTES = 16;

  private final int epoch;
  private final SecretBytes secret;

  ClosingKey(int epoch, SecretBytes secret) {
    this.epoch = epoch;
    this.secret = secret;
  }

  /**
   * Takes a key that the desk kept, or that was published; the bytes are copied.
   *
   * @param epoch the key's epoch
   * @param bytes 32 bytes
   * @return the key
   */
  public static ClosingKey of(int epoch, SecretBytes bytes) {
    return new ClosingKey(epoch, bytes.slice(0, 32));
  }

  /** Returns the key's epoch (0 for the first). */
  public int epoch() {
    return epoch;
  }

  /** Returns a copy, for the desk's keys file or for publishing (32 bytes). */
  public SecretBytes secret() {
    return secret.slice(0, 32);
  }

  /**
   * Wraps an edition key for the day of closing.
   *
   * @param edition the edition
   * @param key its key
   * @return 40 bytes for the front page
   */
  public Octets closingRow(EditionId edition, EditionKey key) {
    try (SecretBytes kek = rowKey(edition);
        SecretBytes clear = key.secret()) {
      return Octets.of(kek.use(k -> clear.use(c -> KeyWrap.wrap(k, c))));
    }
  }

  /**
   * Opens a closing row.
   *
   * @param edition the edition
   * @param row 40 bytes from its front page
   * @return the edition's key
   * @throws VaultException.Tampered if the row is of another edition or epoch, or was changed
   */
  public EditionKey open(EditionId edition, Octets row) throws VaultException.Tampered {
    try (SecretBytes kek = rowKey(edition)) {
      byte[] raw = kek.use(byte[]::clone);
      return new EditionKey(SecretBytes.taking(KeyWrap.unwrap(raw, row.toBytes())));
    }
  }

  /** Derives the 16 public bytes that tell whether this is a front page's closing key. */
  public Octets check() {
    try (SecretBytes check = KeyLabel.CLOSING_CHECK.derive(secret, CHECK_BYTES)) {
      return check.use(Octets::of);
    }
  }

  private SecretBytes rowKey(EditionId edition) {
    return KeyLabel.CLOSING_ROW.derive(secret, edition.toBytes());
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "ClosingKey[epoch " + epoch + ", redacted]";
  }
}
