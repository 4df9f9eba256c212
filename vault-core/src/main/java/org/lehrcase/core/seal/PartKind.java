package org.lehrcase.core.seal;

import org.lehrcase.core.VaultException;

/**
 * What a part file is for, as far as a stranger may know it.
 *
 * <p>Whether an asset is a film or a template stays inside the sealed contents; only its size
 * shows.
 */
public enum PartKind {
  /** The sealed table of an edition's lessons, assets and part keys. */
  CONTENTS(1),
  /** One part of one asset of a lesson or of the series. */
  ASSET(2),
  /** A signed note of the teacher pinned to a lesson. */
  CORRECTION(3),
  /** What is searched in an edition: an image that only its buyers open. */
  SEARCH(4);

  private final int code;

  PartKind(int code) {
    this.code = code;
  }

  /** Returns the byte that stands for this kind in a part header. */
  public int code() {
    return code;
  }

  /**
   * Returns the kind that {@code code} stands for.
   *
   * @throws VaultException.Malformed if no kind has this code in version 1 of the format
   */
  public static PartKind ofCode(int code) throws VaultException {
    for (PartKind kind : values()) {
      if (kind.code == code) {
        return kind;
      }
    }
    throw new VaultException.Malformed(
        "part header: kind " + code + " is unknown, expected 1 to 4");
  }
}
