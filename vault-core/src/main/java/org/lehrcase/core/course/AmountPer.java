package org.lehrcase.core.course;

import java.util.Locale;
import java.util.Optional;

/** What an amount of a materials list is counted for. */
public enum AmountPer {
  /** For one finished piece. */
  PIECE,
  /** For every sheet of the stack. */
  SHEET,
  /** For a square metre of sheet. */
  AREA,
  /** For a metre of edge. */
  EDGE,
  /** For every firing. */
  FIRING,
  /** Bought once for the studio. */
  ONCE;

  /** Finds the meaning of a word in a table; case does not matter. */
  public static Optional<AmountPer> ofWord(String word) {
    for (AmountPer per : values()) {
      if (per.word().equals(word.strip().toLowerCase(Locale.ROOT))) {
        return Optional.of(per);
      }
    }
    return Optional.empty();
  }

  /** Returns the word that stands for it in a table. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
