package org.lehrcase.desk.sticks;

/** A stick is not made. No file that is not whole stands under its name. */
public final class StickException extends Exception {
  private static final long serialVersionUID = 1L;

  private final Reason reason;

  /** Why a stick is not made. */
  public enum Reason {
    /** The folder is no mounted stick, or one that was named twice. */
    NO_STICK,
    /** There is not enough room. */
    FULL,
    /** The stick may not be written. */
    READ_ONLY,
    /** The stick was pulled or fails. */
    GONE,
    /** The stick gives back other bytes than it was given. */
    FAKE,
    /** Something of somebody else has a name that is needed. */
    TAKEN,
    /** What is to go on the stick is not whole, not of this desk, or changed meanwhile. */
    SOURCE,
    /** A name or size that a stick's file system cannot hold. */
    NAME
  }

  /**
   * Creates the error.
   *
   * @param reason why
   * @param message what happened, what is safe, what to do next
   */
  public StickException(Reason reason, String message) {
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
