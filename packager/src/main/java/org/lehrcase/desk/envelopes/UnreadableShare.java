package org.lehrcase.desk.envelopes;

/** What was typed is not what stands on the envelope. */
public final class UnreadableShare extends Exception {
  private static final long serialVersionUID = 1L;

  private final int line;

  /**
   * Creates the error.
   *
   * @param line the line, counted from 1, or 0 if no single line is to blame
   * @param message what does not fit
   */
  public UnreadableShare(int line, String message) {
    super(line == 0 ? message + "." : "Line " + line + ": " + message + ". Read it once more.");
    this.line = line;
  }

  /**
   * Returns where the slip is.
   *
   * @return the line, counted from 1, or 0
   */
  public int line() {
    return line;
  }
}
