package org.lehrcase.desk.home;

/** A desk home could not be used; each subtype is one thing that the teacher can act on. */
public abstract sealed class DeskHomeException extends Exception {
  private static final long serialVersionUID = 1L;

  private DeskHomeException(String message) {
    super(message);
  }

  /** Another desk works in the home. */
  public static final class InUse extends DeskHomeException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what happened, what is safe, what to do next
     */
    public InUse(String message) {
      super(message);
    }
  }

  /** The passphrase does not open the keys. */
  public static final class WrongPassphrase extends DeskHomeException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what happened, what is safe, what to do next
     */
    public WrongPassphrase(String message) {
      super(message);
    }
  }

  /** The folder is no desk home, or already is one. */
  public static final class NotAHome extends DeskHomeException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what happened, what is safe, what to do next
     */
    public NotAHome(String message) {
      super(message);
    }
  }

  /** A file of the home is not as this program wrote it. */
  public static final class Damaged extends DeskHomeException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what happened, what is safe, what to do next
     */
    public Damaged(String message) {
      super(message);
    }
  }

  /** A passphrase was not given, or is too weak to be taken. */
  public static final class Unusable extends DeskHomeException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what happened, what is safe, what to do next
     */
    public Unusable(String message) {
      super(message);
    }
  }
}
