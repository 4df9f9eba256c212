package org.lehrcase.core.keys;

import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.SecretBytes;

/** The secret of one place of a license (SS): finds the place's rekey row after a loss. */
public final class PlaceSecret implements AutoCloseable {
  private final SecretBytes secret;

  PlaceSecret(SecretBytes secret) {
    this.secret = secret;
  }

  /**
   * Makes the row that carries a newer license key to this place.
   *
   * @param edition the edition whose keys file carries the row
   * @param salt the salt of this issue of the keys file, 16 bytes
   * @param newer the license key of the newer generation
   * @return 48 bytes
   */
  public Octets rekeyRow(EditionId edition, Octets salt, LicenseKey newer) {
    try (SecretBytes derived = row(edition, salt);
        SecretBytes clear = newer.secret()) {
      return KeyRow.seal(derived, clear);
    }
  }

  /**
   * Returns the tag that this place's rekey row is found by.
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
   * Opens this place's rekey row. The row does not name its generation: the caller tries the
   * generations after its own against the key rows of the same file.
   *
   * @param edition the edition
   * @param salt the salt of this issue of the keys file
   * @param row 48 bytes
   * @param generation the generation that the key is taken for
   * @return the license key of that generation
   * @throws VaultException.Tampered if the row is not for this place
   */
  public LicenseKey openRekeyRow(EditionId edition, Octets salt, Octets row, int generation)
      throws VaultException.Tampered {
    try (SecretBytes derived = row(edition, salt)) {
      return new LicenseKey(generation, KeyRow.open(derived, row));
    }
  }

  SecretBytes secret() {
    return secret.slice(0, 32);
  }

  private SecretBytes row(EditionId edition, Octets salt) {
    return KeyLabel.REKEY_ROW.derive(
        secret, KeyRow.DERIVED_BYTES, edition.toBytes(), Salt.checked(salt));
  }

  @Override
  public void close() {
    secret.close();
  }

  @Override
  public String toString() {
    return "PlaceSecret[redacted]";
  }
}
