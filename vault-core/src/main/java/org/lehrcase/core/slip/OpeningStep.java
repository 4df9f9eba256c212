package org.lehrcase.core.slip;

/** How far a buyer has come on a laptop, from an envelope to a playing lesson. */
public enum OpeningStep {
  /** No edition was brought in yet. */
  NO_EDITION("no course was brought in yet"),
  /** There is an edition, but no license. */
  NO_LICENSE("there is no license yet"),
  /** There is a license, but no laptop card was made. */
  NO_CARD("no laptop card was made yet"),
  /** A card was made; its key letter is awaited. */
  CARD_MADE("a laptop card was made; the key letter is awaited"),
  /** The license opens its courses. */
  OPEN("the license opens its courses"),
  /** There are keys, but the machine is not recognised. */
  SHUT("the license was open here, and this laptop is not recognised any more"),
  /** The place was passed on to another laptop. */
  PASSED("the place was passed on to another laptop");

  private final String words;

  OpeningStep(String words) {
    this.words = words;
  }

  /**
   * Returns the step in words that complete "So far: …".
   *
   * @return a clause without a full stop
   */
  public String words() {
    return words;
  }
}
