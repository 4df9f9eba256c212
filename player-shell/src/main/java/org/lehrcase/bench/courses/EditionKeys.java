package org.lehrcase.bench.courses;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.keys.EditionKey;

/** Finds the key of an edition among what this laptop was given. */
@FunctionalInterface
public interface EditionKeys {
  /**
   * Looks for the key.
   *
   * @param folder the edition, with its keys file if the copy has one
   * @return the key, owned by the caller; empty if no license and letter here open the edition
   * @throws VaultException if what is stored or the keys file is damaged
   * @throws IOException if the database or the medium fails
   */
  Optional<EditionKey> keyOf(EditionFolder folder) throws VaultException, IOException;
}
