package org.lehrcase.core.license;

import java.io.IOException;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/** Where rows are found by their tag. */
@FunctionalInterface
interface RowSource {
  /**
   * Looks for a row.
   *
   * @param tag 8 bytes
   * @return the row of 48 bytes with that tag, or nothing
   */
  Optional<Octets> find(Octets tag) throws IOException, VaultException;
}
