package org.lehrcase.core.glass.kind;

/** How much a figure can be leaned on. */
public enum Certainty {
  /** Typed in from the sheet of the maker of this very glass. */
  MAKERS_SHEET("from the maker's sheet, as typed in"),
  /** Seen in a published source. */
  PUBLISHED("seen in a published source"),
  /** Computed from other figures; stands and falls with them. */
  DERIVED("derived from other figures"),
  /** Taken for granted because a similar glass has it. */
  ASSUMED("assumed to be as in similar glass"),
  /** Remembered; to be replaced by the maker's sheet before anyone leans on it. */
  MEMORY("from memory; replace it by the maker's sheet");

  private final String words;

  Certainty(String words) {
    this.words = words;
  }

  /** Returns the same in words for a page or a print. */
  public String words() {
    return words;
  }

  /** Says whether the program should ask for a better figure. */
  public boolean isWeak() {
    return this == MEMORY || this == DERIVED;
  }
}
