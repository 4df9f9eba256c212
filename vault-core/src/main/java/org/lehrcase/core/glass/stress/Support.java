package org.lehrcase.core.glass.stress;

/** What keeps the block from bending. */
public enum Support {
  /** Pressed or stuck flat: the harder case for a block cooled from one face. */
  HELD_FLAT,
  /** Lying loose: it bows by hundredths of a millimetre and sheds most of the stress. */
  FREE_TO_BOW
}
