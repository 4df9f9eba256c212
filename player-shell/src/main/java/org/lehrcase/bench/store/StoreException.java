package org.lehrcase.bench.store;

import java.io.IOException;

/** The student's database could not be read or written, for example because the disk is full. */
public final class StoreException extends IOException {
  private static final long serialVersionUID = 1L;

  /**
   * Creates the error.
   *
   * @param message what was tried
   * @param cause what the database said
   */
  public StoreException(String message, Throwable cause) {
    super(message, cause);
  }

  /**
   * Creates the error.
   *
   * @param message what was found and what to do
   */
  public StoreException(String message) {
    super(message);
  }
}
