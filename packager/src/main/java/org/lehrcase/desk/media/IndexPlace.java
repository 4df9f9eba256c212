package org.lehrcase.desk.media;

/** Where a film keeps the table a player needs before it can show the first picture. */
public enum IndexPlace {
  /** Before the pictures: playing can start at once. */
  FRONT,
  /** After the pictures: a player must fetch the end of the file first. */
  END,
  /** In pieces between the pictures: playing can start at once, jumping is slow. */
  FRAGMENTS,
  /** Nowhere: jumping means reading through the file. */
  MISSING
}
