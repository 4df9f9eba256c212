package org.lehrcase.core;

/**
 * Foreign bytes could not be accepted. Each subtype is one thing that the reader can act on; the
 * message says what happened and, where it helps, what to do next, and never contains a secret.
 */
public abstract sealed class VaultException extends Exception {
  private static final long serialVersionUID = 1L;

  private VaultException(String message) {
    super(message);
  }

  /**
   * Authentication failed: a tag, a signature or a digest does not match. Says no more on purpose.
   */
  public static final class Tampered extends VaultException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what was being opened
     */
    public Tampered(String message) {
      super(message);
    }
  }

  /** The bytes end before what they announce. */
  public static final class Truncated extends VaultException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what was being read, found against expected length
     */
    public Truncated(String message) {
      super(message);
    }
  }

  /** The bytes are not of the form that {@code docs/format.md} gives. */
  public static final class Malformed extends VaultException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message which rule is broken
     */
    public Malformed(String message) {
      super(message);
    }
  }

  /** A newer program wrote the bytes. */
  public static final class UnsupportedVersion extends VaultException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message the version found and the newest that this program reads
     */
    public UnsupportedVersion(String message) {
      super(message);
    }
  }

  /** No key at hand opens this; another license, or a license and a key letter, may. */
  public static final class NotLicensed extends VaultException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what is missing
     */
    public NotLicensed(String message) {
      super(message);
    }
  }

  /** A part is absent from this copy, which is not damage. */
  public static final class NotHere extends VaultException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message what is absent and where it may be found
     */
    public NotHere(String message) {
      super(message);
    }
  }

  /** A length or count is above the limit that {@code docs/format.md} gives. */
  public static final class TooLarge extends VaultException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message the limit and what was found
     */
    public TooLarge(String message) {
      super(message);
    }
  }

  /** The message or the stored keys belong to another laptop. */
  public static final class WrongLaptop extends VaultException {
    private static final long serialVersionUID = 1L;

    /**
     * Creates the error.
     *
     * @param message how this was noticed and what to do next
     */
    public WrongLaptop(String message) {
      super(message);
    }
  }
}
