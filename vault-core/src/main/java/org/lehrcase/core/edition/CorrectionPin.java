package org.lehrcase.core.edition;

import java.util.Optional;

/** What a correction is pinned to. The codes are part of the format. */
public enum CorrectionPin {
  /** A time of the lesson's video; the position counts milliseconds. */
  TIME(0),
  /** A page of one of its files; the position counts pages from 1. */
  PAGE(1);

  private final int code;

  CorrectionPin(int code) {
    this.code = code;
  }

  /** Returns the number that stands for it. */
  public int code() {
    return code;
  }

  /** Finds the pin of a number; empty if the number is none. */
  public static Optional<CorrectionPin> ofCode(long code) {
    for (CorrectionPin pin : values()) {
      if (pin.code == code) {
        return Optional.of(pin);
      }
    }
    return Optional.empty();
  }
}
