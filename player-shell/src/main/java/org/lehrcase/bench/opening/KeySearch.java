package org.lehrcase.bench.opening;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.OpenedRow;
import org.lehrcase.core.license.RowEntry;
import org.lehrcase.core.license.TrustedRoots;

/**
 * Looks for the key of an edition with every open place: first in the rows that the licenses carry,
 * then in the keys file of the edition.
 */
final class KeySearch {
  private final Places places;
  private final TrustedRoots trusted;

  KeySearch(Places places, TrustedRoots trusted) {
    this.places = places;
    this.trusted = trusted;
  }

  /** Says whether a row of the license opens with the keys, so that they belong together. */
  static boolean opensRowOf(License license, PlaceKeys keys) throws VaultException {
    for (EditionId edition : license.rows().stream().map(RowEntry::edition).distinct().toList()) {
      Optional<OpenedRow> row = license.open(edition, keys);
      row.ifPresent(OpenedRow::close);
      if (row.isPresent()) {
        return true;
      }
    }
    return false;
  }

  /** Looks for the key; the caller owns what is found. */
  Optional<EditionKey> keyOf(EditionFolder folder, List<License> licenses)
      throws VaultException, IOException {
    EditionId edition = folder.frontPage().edition();
    for (Places.OpenPlace open : places.open()) {
      try (open) {
        for (License license : licenses) {
          Optional<EditionKey> key = keep(open, license.open(edition, open.keys()));
          if (key.isPresent()) {
            return key;
          }
        }
        Optional<EditionKey> key = keep(open, inKeysFile(folder, open.keys()));
        if (key.isPresent()) {
          return key;
        }
      }
    }
    return Optional.empty();
  }

  /** Takes the edition's key out of a row, and stores newer keys if a rekey row led to it. */
  private Optional<EditionKey> keep(Places.OpenPlace open, Optional<OpenedRow> row)
      throws VaultException, IOException {
    if (row.isEmpty()) {
      return Optional.empty();
    }
    if (row.get().rekeyed()) {
      places.keepNewer(open.place(), row.get().placeKeys());
    }
    row.get().placeKeys().close();
    return Optional.of(row.get().editionKey());
  }

  private Optional<OpenedRow> inKeysFile(EditionFolder folder, PlaceKeys keys)
      throws VaultException, IOException {
    try {
      return KeysFile.open(
              folder.roots().get(0),
              folder.frontPage().edition(),
              folder.frontPage().digest(),
              trusted)
          .find(keys);
    } catch (VaultException.NotHere e) {
      return Optional.empty(); // a copy without a keys file opens by the license alone
    }
  }
}
