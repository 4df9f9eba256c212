package org.lehrcase.core.layers.assign;

/** What "nearest in front" means. */
public enum Mode {
  /** A farther subject never lies on a sheet in front of a nearer one. */
  ORDERED,
  /** Only what hides what counts; a farther subject may lie in front of a nearer one. */
  FREE
}
