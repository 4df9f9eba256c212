package org.lehrcase.bench.opening;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.OpenedRow;
import org.lehrcase.core.license.RowEntry;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.primitive.VerifyKey;

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

  /**
   * Looks for the key; the caller owns what is found. A license opens only what the same teacher
   * signed: all buyers share an edition's key, so one of them could sign a folder of his own under
   * the edition's id, and copy the rows of its keys file.
   */
  Optional<EditionKey> keyOf(EditionFolder folder, List<License> licenses)
      throws VaultException, IOException {
    VerifyKey teacher = folder.frontPage().statement().root();
    List<License> own = new ArrayList<>(licenses);
    own.removeIf(license -> !license.statement().root().equals(teacher));
    Set<LicenseId> foreign = licenses.stream().map(License::id).collect(Collectors.toSet());
    own.forEach(license -> foreign.remove(license.id()));
    for (Places.OpenPlace open : places.open()) {
      try (open) {
        boolean strange = open.place().license().filter(foreign::contains).isPresent();
        Optional<EditionKey> key = strange ? Optional.empty() : keyOf(folder, own, open);
        if (key.isPresent()) {
          return key;
        }
      }
    }
    return Optional.empty();
  }

  private Optional<EditionKey> keyOf(
      EditionFolder folder, List<License> licenses, Places.OpenPlace open)
      throws VaultException, IOException {
    for (License license : licenses) {
      Optional<EditionKey> key =
          keep(open, license.open(folder.frontPage().edition(), open.keys()));
      if (key.isPresent()) {
        return key;
      }
    }
    return keep(open, inKeysFile(folder, open.keys()));
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
    Optional<VaultException> reason = Optional.empty();
    for (Path root : folder.roots()) {
      try {
        FrontPage front = folder.frontPage();
        return KeysFile.open(root, front.edition(), front.digest(), trusted).find(keys);
      } catch (VaultException.NotHere e) {
        continue; // a copy without a keys file opens by the license alone
      } catch (VaultException e) {
        // Another edition completes this one, or is being merged; its keys file says nothing here.
        reason = root.equals(folder.roots().get(0)) ? Optional.of(e) : reason;
      }
    }
    if (reason.isPresent()) {
      throw reason.get();
    }
    return Optional.empty();
  }
}
