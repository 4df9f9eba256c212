package org.lehrcase.desk.pack;

/** A course was not packed, for a reason that the teacher can act on. */
public final class PackException extends Exception {
  private static final long serialVersionUID = 1L;

  private final Reason reason;

  /** Why. */
  public enum Reason {
    /** The check found errors. */
    COURSE_HAS_ERRORS,
    /** The disk has too little room. */
    NO_SPACE,
    /** Something else lies where the edition would appear. */
    TARGET_TAKEN,
    /** A file of the course was changed while it was packed. */
    CHANGED_MEANWHILE,
    /** A light copy of a film could not be made. */
    NO_LIGHT_FILM
  }

  /**
   * Creates the error.
   *
   * @param reason why
   * @param message what happened, what is safe, what to do next
   */
  public PackException(Reason reason, String message) {
    super(message);
    this.reason = reason;
  }

  /**
   * Returns why.
   *
   * @return the reason
   */
  public Reason reason() {
    return reason;
  }
}
