package org.lehrcase.core.table;

/**
 * Something wrong or doubtful in a text file, for the person who wrote it.
 *
 * @param line line of the file, counted from 1; 0 if the whole file is meant
 * @param message what is wrong and what to write instead, one sentence without a full stop
 */
public record Problem(int line, String message) {

  /** Makes a problem of the whole file. */
  public static Problem ofFile(String message) {
    return new Problem(0, message);
  }
}
