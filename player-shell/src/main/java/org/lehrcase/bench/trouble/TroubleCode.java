package org.lehrcase.bench.trouble;

import java.util.Locale;

/** The kinds of trouble that a page or a script may tell apart. */
public enum TroubleCode {
  /** The request is not of the form the bench expects. */
  BAD_REQUEST,
  /** The address leads nowhere. */
  NOT_FOUND,
  /** The sender of the request is not this bench's own page. */
  STRANGER,
  /** The address belongs to an earlier start. */
  OLD_ADDRESS,
  /** The method is not offered at this address. */
  METHOD,
  /** The body or file is larger than anything the bench takes. */
  TOO_LARGE,
  /** No license on this laptop opens it, or its key letter is missing. */
  NOT_LICENSED,
  /** This machine is not the one that the keys were given to. */
  SHUT,
  /** The part is not in this copy of the edition. */
  NOT_HERE,
  /** The stick or folder with the edition is away. */
  STICK_GONE,
  /** Bytes of the edition or of a message do not check out. */
  DAMAGED,
  /** The file or message is of no kind that the bench knows. */
  UNKNOWN_FILE,
  /** A newer program wrote it. */
  TOO_NEW,
  /** The teacher does not allow this for this kind of paper. */
  NOT_ALLOWED,
  /** What was asked for breaks a rule of the sales book. */
  REFUSED,
  /** The keys are still shut: the passphrase was not given. */
  LOCKED,
  /** The data folder could not be read or written. */
  STORE,
  /** Another copy of the bench uses the same data folder. */
  ALREADY_RUNNING,
  /** Something that should not happen; the log has the details. */
  INTERNAL;

  /**
   * Returns the code as it stands in answers and in documents.
   *
   * @return lower case with hyphens, for example {@code stick-gone}
   */
  public String text() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
