package org.lehrcase.core.license;

import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.KeyRow;

/**
 * A key row that travels in a license: opens one edition for the laptops of that license.
 *
 * @param edition the edition
 * @param salt the salt that the row was made with, 16 bytes
 * @param row 48 bytes, useless without a letter's keys
 */
public record RowEntry(EditionId edition, Octets salt, Octets row) {
  /** Length of a salt in bytes. */
  public static final int SALT_BYTES = 16;

  /** Checks the lengths. */
  public RowEntry {
    if (salt.size() != SALT_BYTES || row.size() != KeyRow.BYTES) {
      throw new IllegalArgumentException("a salt has 16 bytes and a row has 48");
    }
  }
}
