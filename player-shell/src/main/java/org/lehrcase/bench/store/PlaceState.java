package org.lehrcase.bench.store;

/** How far this laptop's right to use a license has come. */
public enum PlaceState {
  /** A laptop card was made and its seed is kept; no letter yet. */
  ASKED,
  /** A key letter was accepted; the courses open. */
  ACTIVE,
  /** The place was passed on to another laptop. */
  PASSED,
  /** The keys are here, but this machine is not recognised; a new letter opens it again. */
  SHUT
}
