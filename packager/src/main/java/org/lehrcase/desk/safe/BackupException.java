package org.lehrcase.desk.safe;

import java.io.IOException;

/** A backup is not what it should be; nothing was changed. */
public final class BackupException extends IOException {
  private static final long serialVersionUID = 1L;

  /**
   * Creates the error.
   *
   * @param message what happened, what is safe, what to do next
   */
  public BackupException(String message) {
    super(message);
  }
}
