package org.lehrcase.bench.trouble;

import java.io.IOException;

/** The stick or folder from which something was being read is away. */
public final class MediumGoneException extends IOException {
  private static final long serialVersionUID = 1L;

  /**
   * Creates the error.
   *
   * @param message what was being read
   * @param cause what the system said
   */
  public MediumGoneException(String message, IOException cause) {
    super(message, cause);
  }
}
