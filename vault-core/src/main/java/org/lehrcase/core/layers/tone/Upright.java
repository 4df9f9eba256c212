package org.lehrcase.core.layers.tone;

/**
 * The Exif tag 0x0112 of a picture (JEITA CP-3451): how its stored pixels are turned to stand
 * upright. To be applied once; whatever is saved afterwards is upright and has no tag.
 *
 * @param tag 1 to 8
 */
public record Upright(int tag) {
  /**
   * Checks the tag.
   *
   * @throws IllegalArgumentException if it is none of the eight
   */
  public Upright {
    if (tag < 1 || tag > 8) {
      throw new IllegalArgumentException("an orientation is 1 to 8");
    }
  }

  /** Says whether width and height change places. */
  public boolean swaps() {
    return tag >= 5;
  }

  private boolean flipsX() {
    return tag == 2 || tag == 3 || tag == 7 || tag == 8;
  }

  private boolean flipsY() {
    return tag == 3 || tag == 4 || tag == 6 || tag == 7;
  }

  /** Returns where a stored pixel stands in the upright picture, from the left. */
  public int x(int storedX, int storedY, int storedWidth, int storedHeight) {
    int x = flipsX() ? storedWidth - 1 - storedX : storedX;
    int y = flipsY() ? storedHeight - 1 - storedY : storedY;
    return swaps() ? y : x;
  }

  /** Returns where a stored pixel stands in the upright picture, from above. */
  public int y(int storedX, int storedY, int storedWidth, int storedHeight) {
    int x = flipsX() ? storedWidth - 1 - storedX : storedX;
    int y = flipsY() ? storedHeight - 1 - storedY : storedY;
    return swaps() ? x : y;
  }
}
