package org.lehrcase.core.device;

import java.util.Optional;

/**
 * A kind of fact about a machine, with the most random bits that it is trusted to hold. The code
 * stands in stored wraps and never changes.
 */
public enum TraitKind {
  /** A random secret that the program itself keeps outside its home folder. */
  LOCAL_SECRET(1, 128),
  /** The id that the operating system drew when it was installed. */
  INSTALLATION(2, 122),
  /** The UUID of the root volume. */
  ROOT_VOLUME(3, 122),
  /** The UUID of the main board. */
  HARDWARE(4, 122),
  /** The serial number of the system disk. */
  SYSTEM_DISK(5, 40),
  /** The permanent addresses of the built-in network cards, in ascending order. */
  NETWORK(6, 48);

  private final int code;
  private final int maxBits;

  TraitKind(int code, int maxBits) {
    this.code = code;
    this.maxBits = maxBits;
  }

  int code() {
    return code;
  }

  int maxBits() {
    return maxBits;
  }

  static Optional<TraitKind> ofCode(int code) {
    for (TraitKind kind : values()) {
      if (kind.code == code) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }
}
