package org.lehrcase.bench.opening;

/** How far a license has come on this laptop. */
public enum LicenseState {
  /** No laptop card was made for it yet. */
  NO_CARD("noCard"),
  /** A card was made; its key letter is awaited. */
  ASKED("asked"),
  /** It opens its courses. */
  ACTIVE("active"),
  /** Its keys are here, but this machine is not recognised. */
  SHUT("shut"),
  /** Its place was passed on. */
  PASSED("passed"),
  /** Its place was given back to the teacher. */
  GIVEN_BACK("givenBack");

  private final String text;

  LicenseState(String text) {
    this.text = text;
  }

  /**
   * Returns the word that pages know.
   *
   * @return one word
   */
  public String text() {
    return text;
  }
}
