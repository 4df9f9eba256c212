package org.lehrcase.bench.trouble;

import java.io.IOException;
import org.lehrcase.core.VaultException;

/**
 * Something the person in front of the bench has to know, with the three things to say about it.
 */
public final class Trouble extends Exception {
  private static final long serialVersionUID = 1L;
  private static final String NOTHING_CHANGED = "Nothing was changed.";

  private final TroubleCode code;
  private final String safe;
  private final String next;

  /**
   * Creates it.
   *
   * @param code the kind
   * @param happened one sentence
   * @param safe what is safe
   * @param next what to do
   */
  public Trouble(TroubleCode code, String happened, String safe, String next) {
    super(happened);
    this.code = code;
    this.safe = safe;
    this.next = next;
  }

  /**
   * Creates it for a case in which nothing was changed.
   *
   * @param code the kind
   * @param happened one sentence
   * @param next what to do
   */
  public Trouble(TroubleCode code, String happened, String next) {
    this(code, happened, NOTHING_CHANGED, next);
  }

  /**
   * Puts a refused message, edition or part into words.
   *
   * @param cause what the vault said
   * @return the same in the three sentences
   */
  public static Trouble of(VaultException cause) {
    Trouble trouble = worded(cause);
    trouble.initCause(cause);
    return trouble;
  }

  private static Trouble worded(VaultException cause) {
    String message = String.valueOf(cause.getMessage());
    if (cause instanceof VaultException.NotLicensed) {
      return new Trouble(
          TroubleCode.NOT_LICENSED, message, "Drop your license and your key letter on the page.");
    }
    if (cause instanceof VaultException.NotHere) {
      return new Trouble(
          TroubleCode.NOT_HERE, message, "Bring in a complete copy; the other lessons play.");
    }
    if (cause instanceof VaultException.WrongLaptop) {
      return new Trouble(
          TroubleCode.SHUT,
          message,
          "Your notes and positions are kept.",
          "Send a new laptop card; the answer opens everything again.");
    }
    if (cause instanceof VaultException.UnsupportedVersion) {
      return new Trouble(TroubleCode.TOO_NEW, message, "Install the newer Lehrcase.");
    }
    if (cause instanceof VaultException.TooLarge) {
      return new Trouble(
          TroubleCode.TOO_LARGE, message, "Ask for the file again; this one is not right.");
    }
    return new Trouble(
        TroubleCode.DAMAGED, message, "Copy it again from the original, or ask for a new one.");
  }

  /**
   * Puts a failure of disk or stick into words.
   *
   * @param cause what the system said
   * @return the same in the three sentences
   */
  public static Trouble of(IOException cause) {
    if (cause instanceof MediumGoneException) {
      return stickGone(String.valueOf(cause.getMessage()));
    }
    Trouble trouble =
        new Trouble(
            TroubleCode.STORE,
            "A file could not be read or written: " + cause.getMessage(),
            "What was kept before is kept.",
            "Look whether the disk is full or the stick is away, then try again.");
    trouble.initCause(cause);
    return trouble;
  }

  /**
   * Says that a stick is away.
   *
   * @param title the title of the edition on it
   * @return the trouble, with what to do
   */
  public static Trouble stickGone(String title) {
    return new Trouble(
        TroubleCode.STICK_GONE,
        "The stick with \"" + title + "\" is not here.",
        "Your place in the lesson is kept.",
        "Put the stick back in; it goes on at the same second.");
  }

  /**
   * Returns the kind.
   *
   * @return the code
   */
  public TroubleCode code() {
    return code;
  }

  /**
   * Returns what is safe.
   *
   * @return one sentence
   */
  public String safe() {
    return safe;
  }

  /**
   * Returns what to do next.
   *
   * @return one sentence
   */
  public String next() {
    return next;
  }
}
