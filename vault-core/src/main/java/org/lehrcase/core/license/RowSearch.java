package org.lehrcase.core.license;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.keys.PlaceSecret;
import org.lehrcase.core.primitive.SecretBytes;

/**
 * Finds the row that a place's keys open: first under its own license key and every earlier one,
 * then, after a loss elsewhere, through its rekey row under the newer one and those in between.
 */
final class RowSearch {
  private final EditionId edition;
  private final Octets salt;
  private final RowSource rows;

  RowSearch(EditionId edition, Octets salt, RowSource rows) {
    this.edition = edition;
    this.salt = salt;
    this.rows = rows;
  }

  Optional<OpenedRow> find(PlaceKeys keys) throws IOException, VaultException {
    LicenseKey own = keys.licenseKey();
    Optional<OpenedRow> direct = walkBack(own, 0, keys.placeSecret());
    if (direct.isPresent()) {
      return direct;
    }
    Optional<LicenseKey> newer = throughRekeyRow(keys);
    if (newer.isEmpty()) {
      return Optional.empty();
    }
    try (LicenseKey key = newer.get()) {
      return walkBack(key, own.generation() + 1, keys.placeSecret());
    }
  }

  /** Steps from a key down to a generation; the key at the start is the one to keep. */
  private Optional<OpenedRow> walkBack(LicenseKey start, int downTo, PlaceSecret secret)
      throws IOException, VaultException {
    LicenseKey key = start.at(start.generation());
    try {
      while (true) {
        Optional<Octets> row = rows.find(key.rowTag(edition, salt));
        if (row.isPresent()) {
          EditionKey editionKey = key.openRow(edition, salt, row.get());
          return Optional.of(new OpenedRow(editionKey, copy(start, secret), downTo > 0));
        }
        if (key.generation() == downTo) {
          return Optional.empty();
        }
        key = earlier(key);
      }
    } finally {
      key.close();
    }
  }

  /**
   * Opens the place's rekey row. The row does not name its generation: the key is stepped back
   * until it is the place's own, which also proves that it is a later key of the same license.
   */
  private Optional<LicenseKey> throughRekeyRow(PlaceKeys keys) throws IOException, VaultException {
    PlaceSecret secret = keys.placeSecret();
    LicenseKey own = keys.licenseKey();
    Optional<Octets> row = rows.find(secret.rowTag(edition, salt));
    if (row.isEmpty()) {
      return Optional.empty();
    }
    Octets ownTag = own.rowTag(edition, salt);
    LicenseKey key = secret.openRekeyRow(edition, salt, row.get(), LicenseKey.LAST_GENERATION);
    int mostSteps = LicenseKey.LAST_GENERATION - own.generation();
    for (int steps = 1; steps <= mostSteps; steps++) {
      key = earlier(key);
      if (key.rowTag(edition, salt).equals(ownTag)) {
        key.close();
        int generation = own.generation() + steps;
        return Optional.of(secret.openRekeyRow(edition, salt, row.get(), generation));
      }
    }
    key.close();
    return Optional.empty();
  }

  private static LicenseKey earlier(LicenseKey key) {
    try (key) {
      return key.stepBack();
    }
  }

  private static PlaceKeys copy(LicenseKey licenseKey, PlaceSecret secret) {
    try (SecretBytes both = new PlaceKeys(licenseKey, secret).secret()) {
      return PlaceKeys.of(licenseKey.generation(), both);
    }
  }
}
