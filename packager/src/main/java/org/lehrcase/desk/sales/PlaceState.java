package org.lehrcase.desk.sales;

/** Whether a place may open editions packed from now on. */
public enum PlaceState {
  /** In use by one laptop. */
  LIVE,
  /** Given up: its card is refused and later editions do not open there. */
  RETIRED
}
