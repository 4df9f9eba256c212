package org.lehrcase.desk.answering;

/** The desk refuses; nothing was changed. */
public final class RefusedException extends Exception {
  private static final long serialVersionUID = 1L;

  private final Refusal reason;

  /**
   * Creates the refusal.
   *
   * @param reason why
   * @param message what happened and what to do next
   */
  public RefusedException(Refusal reason, String message) {
    super(message);
    this.reason = reason;
  }

  /**
   * Returns why.
   *
   * @return the reason
   */
  public Refusal reason() {
    return reason;
  }
}
