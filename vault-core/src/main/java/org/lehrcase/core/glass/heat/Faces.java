package org.lehrcase.core.glass.heat;

/** Which faces of the block take and give heat. */
public enum Faces {
  /** Top and bottom alike: elements on the sides or the floor, shelf on posts with air below. */
  BOTH,
  /** The top only: elements in the lid, or a block on a solid shelf or on fibre. The default. */
  ONE
}
