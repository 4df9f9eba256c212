package org.lehrcase.core.glass.care;

/** Where a caution is shown. */
public enum Place {
  /** Beside every schedule and on every printed sheet. */
  EVERY_FIRING,
  /** Firings that nobody can watch throughout. */
  LONG_FIRING,
  /** Lines below 540 °C with the vent open. */
  BURN_OFF,
  /** Lines during which somebody looks in. */
  LOOKING_IN,
  /** Lid and unloading. */
  LID,
  /** Dams, shelf, fibre, wash. */
  DAMS_AND_SHELF,
  /** Enamel, powder, grinding. */
  ENAMEL,
  /** A kiln that is put in for the first time. */
  KILN_SETTINGS,
  /** After a power cut. */
  POWER_CUT,
  /** Thickness, volume and weight. */
  BLOCK,
  /** What is said of a finished piece. */
  FINISHED_PIECE
}
