package org.lehrcase.desk.cli;

/** What the desk's commands tell the shell. */
public final class ExitCode {
  /** Done. */
  public static final int DONE = 0;

  /** Refused with a reason; nothing was changed. */
  public static final int REFUSED = 1;

  /** The command line is wrong. */
  public static final int USAGE = 2;

  /** The course has errors and cannot be packed. */
  public static final int COURSE_HAS_ERRORS = 3;

  /** A file or disk could not be read or written. */
  public static final int FILES = 4;

  /** The passphrase is wrong or was not given. */
  public static final int PASSPHRASE = 5;

  /** Another desk is at work in the same home. */
  public static final int IN_USE = 6;

  /** The program has a fault. */
  public static final int FAULT = 70;

  private ExitCode() {}
}
