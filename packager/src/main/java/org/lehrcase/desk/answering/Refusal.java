package org.lehrcase.desk.answering;

/** Why the desk does not do what it was asked. */
public enum Refusal {
  /** More laptops were replaced this year than are granted without asking. */
  ASK_FIRST,
  /** The file holds no laptop card, or more than one. */
  NOT_A_CARD,
  /** The card was damaged or changed on its way. */
  BROKEN_CARD,
  /** The card names no license and none was given. */
  NO_LICENSE_NAMED,
  /** The card names another license than the one given. */
  OTHER_LICENSE,
  /** The license is not in the sales book. */
  UNKNOWN_LICENSE,
  /** The license is blocked. */
  BLOCKED_LICENSE,
  /** The card proves a code that was never given. */
  CODE_NOT_ASKED,
  /** The card's place was retired. */
  RETIRED_CARD,
  /** The card, or the option, names a place that the license never had. */
  UNKNOWN_PLACE,
  /** Every place is in use. */
  PLACES_IN_USE,
  /** Places were replaced so often that the license has no key left. */
  KEYS_USED_UP,
  /** What was done cannot be taken back any more. */
  TOO_LATE,
  /** An entry, such as a name or a series, breaks a rule. */
  WRONG_ENTRY
}
