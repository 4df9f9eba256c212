package org.lehrcase.desk.media;

/** Says that a film file cannot be understood, and in which way. */
public final class MediaException extends Exception {
  private static final long serialVersionUID = 1L;

  /** The way in which a file cannot be understood. */
  public enum Kind {
    /** The file is no film of a kind known here. */
    UNKNOWN_FORMAT,
    /** The file ends early or contradicts itself. */
    BROKEN,
    /** The file is beyond a limit stated in this package. */
    TOO_LARGE,
    /** The file is sound but uses a feature that cannot be carried over. */
    UNSUPPORTED
  }

  private final Kind kind;
  private final String reason;

  /**
   * Creates the exception.
   *
   * @param kind the way in which the file cannot be understood
   * @param message what was found and where, for the teacher's eyes
   */
  public MediaException(Kind kind, String message) {
    super(message);
    this.kind = kind;
    this.reason = message;
  }

  static MediaException broken(String message) {
    return new MediaException(Kind.BROKEN, message);
  }

  /** Returns what was found and where, one phrase for the teacher's eyes. */
  public String reason() {
    return reason;
  }

  /** Returns the way in which the file cannot be understood. */
  public Kind kind() {
    return kind;
  }
}
