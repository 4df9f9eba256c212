package org.lehrcase.core.keys;

import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * The key of a license at one generation (LK_g). Generations step backwards: whoever holds one can
 * derive every earlier one and none later, so a replacement opens older editions while a lost
 * laptop opens no newer ones.
 */
public final class LicenseKey implements AutoCloseable {
  /** The newest generation that a license can reach. */
  public static final int LAST_GENERATION = 63;

  private final int generation;
  private final SecretBytes secret;

  LicenseKey(int generation, SecretBytes secret) {
    if (generation < 0 || generation > LAST_GENERATION) {
      throw new IllegalArgumentException("a generation is 0 to 63, not " + generation);
    }
    this.generation = generation;
    this.secret = secret;
  }

  /**
   * Takes a key that came out of a letter or a row; the bytes are copied.
   *
   * @param generation 0 to {@link #LAST_GENERATION}
   * @param bytes 32 bytes
   * @return the key
   */
  public static LicenseKey of(int generation, SecretBytes bytes) {
    return new LicenseKey(generation, bytes.slice(0, 32));
  }

  /**
   * Returns the generation.
   *
   * @return 0 to {@link #LAST_GENERATION}
   */
  public int generation() {
    return generation;
  }

  /**
   * Derives the key of an earlier generation.
   *
   * @param earlier 0 to this key's generation
   * @return the key; a copy of this one when the generations are equal
   * @throws IllegalArgumentException if the generation is later than this key's
   */
  public LicenseKey at(int earlier) {
    if (earlier < 0 || earlier > generation) {
      throw new IllegalArgumentException(
          "generation " + earlier + " cannot be derived from " + generation);
    }
    SecretBytes key = secret.slice(0, 32);
    for (int g = generation; g > earlier; g--) {
      SecretBytes next = KeyLabel.STEP.derive(key);
      key.close();
      key = next;
    }
    return new LicenseKey(earlier, key);
  }

  /**
   * Derives the key one generation earlier.
   *
   * @return the key of the generation before
   * @throws IllegalArgumentException if this is generation 0
   */
  public LicenseKey stepBack() {
    return at(generation - 1);
  }

  /**
   * Makes the row that lets this license open an edition.
   *
   * @param edition the edition
   * @param salt the salt of this issue of the keys file, 16 bytes
   * @param key the edition's key
   * @return 48 bytes
   */
  public Octets keyRow(EditionId edition, Octets salt, EditionKey key) {
    try (SecretBytes derived = row(edition, salt);
        SecretBytes clear = key.secret()) {
      return KeyRow.seal(derived, clear);
    }
  }

  /**
   * Returns the tag that this license's row is found by.
   *
   * @param edition the edition
   * @param salt the salt of this issue of the keys file
   * @return 8 bytes
   */
  public Octets rowTag(EditionId edition, Octets salt) {
    try (SecretBytes derived = row(edition, salt)) {
      return KeyRow.tag(derived);
    }
  }

  /**
   * Opens this license's row.
   *
   * @param edition the edition
   * @param salt the salt of this issue of the keys file
   * @param row 48 bytes
   * @return the edition's key
   * @throws VaultException.Tampered if the row is not for this license and generation
   */
  public EditionKey openRow(EditionId edition, Octets salt, Octets row)
      throws VaultException.Tampered {
    try (SecretBytes derived = row(edition, salt)) {
      return new EditionKey(KeyRow.open(derived, row));
    }
  }

  /**
   * Derives the key of one copy of a notebook. It comes from generation 0, which every laptop of
   * the license can derive whatever was lost since; no other buyer can.
   *
   * @param license the license
   * @param salt the salt of this copy, 16 random bytes
   * @return the key
   */
  public NotebookKey notebookKey(LicenseId license, Octets salt) {
    try (LicenseKey first = at(0)) {
      return new NotebookKey(
          KeyLabel.NOTEBOOK.derive(first.secret, license.toBytes(), Salt.checked(salt)));
    }
  }

  SecretBytes secret() {
    return secret.slice(0, 32);
  }

  private SecretBytes row(EditionId edition, Octets salt) {
    return KeyLabel.KEY_ROW.derive(
        secret, KeyRow.DERIVED_BYTES, edition.toBytes(), Salt.checked(salt));
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "LicenseKey[generation " + generation + ", redacted]";
  }
}
