package org.lehrcase.desk.sales;

import java.io.IOException;

/** The sales book could not be read or written; nothing of the failed step was kept. */
public final class SalesException extends IOException {
  private static final long serialVersionUID = 1L;

  /**
   * Creates the error.
   *
   * @param message what happened, what is safe, what to do next
   */
  public SalesException(String message) {
    super(message);
  }

  /**
   * Creates the error with what caused it.
   *
   * @param message what happened, what is safe, what to do next
   * @param cause the error of the database
   */
  public SalesException(String message, Throwable cause) {
    super(message, cause);
  }
}
