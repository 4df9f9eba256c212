package org.lehrcase.bench.opening;

import java.io.IOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.laptop.Laptop;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.NotebookKey;

/** The keys that copies of notebooks are locked with: every laptop of one license has the same. */
public final class NotebookKeys {
  private final Places places;

  /**
   * Works on the student's database.
   *
   * @param store the database
   * @param laptop this machine
   */
  public NotebookKeys(StudyStore store, Laptop laptop) {
    this.places = new Places(store.places(), laptop, new SecureRandom());
  }

  /**
   * Returns the licenses whose keys this laptop has, what came last first.
   *
   * @return their ids
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be read
   */
  public List<LicenseId> licenses() throws VaultException, IOException {
    List<LicenseId> found = new ArrayList<>();
    for (Places.OpenPlace open : places.open()) {
      try (open) {
        open.place().license().filter(id -> !found.contains(id)).ifPresent(id -> found.add(0, id));
      }
    }
    return found;
  }

  /**
   * Derives the key of a copy.
   *
   * @param license the license that the copy is locked to
   * @param salt the salt of the copy
   * @return the key, which the caller closes; empty if this laptop has no place of that license
   * @throws VaultException if what is stored is damaged
   * @throws IOException if the database cannot be read
   */
  public Optional<NotebookKey> of(LicenseId license, Octets salt)
      throws VaultException, IOException {
    Optional<NotebookKey> key = Optional.empty();
    for (Places.OpenPlace open : places.open()) {
      try (open) {
        if (key.isEmpty() && open.place().license().equals(Optional.of(license))) {
          key = Optional.of(open.keys().licenseKey().notebookKey(license, salt));
        }
      }
    }
    return key;
  }
}
