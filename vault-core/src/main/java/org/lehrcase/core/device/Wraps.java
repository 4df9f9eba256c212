package org.lehrcase.core.device;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/**
 * The stored form of a binding, {@value #BYTES} bytes: {@code version 1 ‖ salt 16 ‖ five trait
 * kinds ‖ ten rows of 40}. Holds no trait and no check value: a row tells nothing before three
 * right traits are put together.
 */
public final class Wraps {
  /** Length in bytes. */
  public static final int BYTES = 422;

  static final int SALT_BYTES = 16;
  static final int ROW_BYTES = 40;

  /** Every three of five slots, in order; a row stands at the index of its three. */
  static final int[][] SUBSETS = {
    {0, 1, 2}, {0, 1, 3}, {0, 1, 4}, {0, 2, 3}, {0, 2, 4},
    {0, 3, 4}, {1, 2, 3}, {1, 2, 4}, {1, 3, 4}, {2, 3, 4},
  };

  private static final int VERSION = 1;
  private static final int KINDS_AT = 1 + SALT_BYTES;
  private static final int ROWS_AT = KINDS_AT + TraitRules.MAX_TRAITS;

  private final Octets stored;

  private Wraps(Octets stored) {
    this.stored = stored;
  }

  /**
   * Reads a stored binding.
   *
   * @param bytes what {@link #toBytes} returned
   * @return the wraps
   * @throws VaultException.Truncated if the length is not {@value #BYTES}
   * @throws VaultException.UnsupportedVersion if a newer program wrote it
   * @throws VaultException.Malformed if a trait kind is unknown or stands twice
   */
  public static Wraps parse(byte[] bytes) throws VaultException {
    if (bytes.length != BYTES) {
      throw new VaultException.Truncated(
          "what recognises this laptop has " + bytes.length + " bytes, not " + BYTES);
    }
    if (bytes[0] != VERSION) {
      throw new VaultException.UnsupportedVersion(
          "laptop binding version " + bytes[0] + ", this program reads " + VERSION);
    }
    int last = 0;
    for (int slot = 0; slot < TraitRules.MAX_TRAITS; slot++) {
      int code = bytes[KINDS_AT + slot];
      boolean known = TraitKind.ofCode(code).isPresent() && code > last;
      if (code != 0 && !known || code == 0 && slot < 3) {
        throw new VaultException.Malformed("the trait kinds of this laptop are not in order");
      }
      last = code == 0 ? Byte.MAX_VALUE : code;
    }
    return new Wraps(Octets.of(bytes));
  }

  static Wraps of(Octets salt, List<Trait> traits, List<Octets> rows) {
    byte[] bytes = new byte[BYTES];
    bytes[0] = VERSION;
    System.arraycopy(salt.toBytes(), 0, bytes, 1, SALT_BYTES);
    for (int slot = 0; slot < traits.size(); slot++) {
      bytes[KINDS_AT + slot] = (byte) traits.get(slot).kind().code();
    }
    for (int row = 0; row < SUBSETS.length; row++) {
      System.arraycopy(rows.get(row).toBytes(), 0, bytes, ROWS_AT + ROW_BYTES * row, ROW_BYTES);
    }
    return new Wraps(Octets.of(bytes));
  }

  Octets salt() {
    return stored.slice(1, KINDS_AT);
  }

  Octets row(int subset) {
    int at = ROWS_AT + ROW_BYTES * subset;
    return stored.slice(at, at + ROW_BYTES);
  }

  /** Returns the kinds that are bound, by slot; fewer than five if the machine told fewer. */
  List<TraitKind> kinds() {
    List<TraitKind> kinds = new ArrayList<>();
    byte[] codes = stored.slice(KINDS_AT, ROWS_AT).toBytes();
    for (byte code : codes) {
      Optional<TraitKind> kind = TraitKind.ofCode(code);
      kind.ifPresent(kinds::add);
    }
    return kinds;
  }

  /**
   * Returns the stored form.
   *
   * @return {@value #BYTES} bytes
   */
  public byte[] toBytes() {
    return stored.toBytes();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Wraps that && stored.equals(that.stored);
  }

  @Override
  public int hashCode() {
    return stored.hashCode();
  }

  @Override
  public String toString() {
    return "Wraps" + kinds();
  }
}
