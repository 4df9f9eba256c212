package org.lehrcase.desk.sales;

/** Whether the desk still serves a license. */
public enum LicenseState {
  /** Cards are answered and new editions carry its rows. */
  OPEN,
  /** No card is answered and no later edition opens; what was opened stays open. */
  BLOCKED
}
