package org.lehrcase.bench.opening;

import java.util.Locale;

/**
 * What a dropped file was and what became of it.
 *
 * @param kind what it was
 * @param outcome what became of it
 * @param message one sentence for the person
 * @param next what to do now, or empty
 */
public record Dropped(Kind kind, Outcome outcome, String message, String next) {
  /** What a file may be. */
  public enum Kind {
    /** A license. */
    LICENSE,
    /** A key letter. */
    LETTER,
    /** A laptop card, which belongs to the teacher. */
    CARD,
    /** A new laptop's ask. */
    ASK,
    /** An old laptop's answer to an ask. */
    LINK,
    /** A correction. */
    CORRECTION,
    /** The key that a shop published when it closed. */
    CLOSING,
    /** The front page of an edition. */
    EDITION,
    /** Nothing that Lehrcase knows. */
    UNKNOWN;

    /**
     * Returns the word that pages know.
     *
     * @return lower case
     */
    public String text() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** What became of it. */
  public enum Outcome {
    /** It is kept and changes what opens. */
    ACCEPTED,
    /** It was here already. */
    KNOWN,
    /** It is not kept; nothing was changed. */
    REFUSED;

    /**
     * Returns the word that pages know.
     *
     * @return lower case
     */
    public String text() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  static Dropped refused(Kind kind, String message, String next) {
    return new Dropped(kind, Outcome.REFUSED, message, next);
  }
}
