package org.lehrcase.core.layers.paper;

import java.util.ArrayList;
import java.util.List;

/**
 * A drawing at true size over several pages.
 *
 * @param landscape whether the paper lies on its side
 * @param across pages beside each other
 * @param down pages below each other
 * @param stepXMm from the left edge of one page's part to that of the next
 * @param stepYMm likewise downwards
 * @param partXMm width of the drawing that fits on a page
 * @param partYMm height
 */
public record Tiling(
    boolean landscape,
    int across,
    int down,
    double stepXMm,
    double stepYMm,
    double partXMm,
    double partYMm) {
  private static final double ROUNDING_MM = 1e-9;

  /**
   * Divides a drawing so that it takes the fewest pages, and of those the fewest joins.
   *
   * @param marginMm that stays empty on every side of a page
   * @param overlapMm that two neighbouring pages both show
   * @throws IllegalArgumentException if margins and overlap leave no room
   */
  public static Tiling of(
      double widthMm, double heightMm, Paper paper, double marginMm, double overlapMm) {
    Tiling upright = one(widthMm, heightMm, paper, false, marginMm, overlapMm);
    Tiling flat = one(widthMm, heightMm, paper.turned(), true, marginMm, overlapMm);
    boolean better =
        flat.pages() < upright.pages()
            || flat.pages() == upright.pages() && flat.joins() < upright.joins();
    return better ? flat : upright;
  }

  private static Tiling one(
      double widthMm,
      double heightMm,
      Paper paper,
      boolean landscape,
      double marginMm,
      double overlapMm) {
    double usableX = paper.widthMm() - 2 * marginMm;
    double usableY = paper.heightMm() - 2 * marginMm;
    if (!(usableX > overlapMm && usableY > overlapMm && overlapMm >= 0 && marginMm >= 0)) {
      throw new IllegalArgumentException("margins and overlap leave no room on the paper");
    }
    return new Tiling(
        landscape,
        strips(widthMm, usableX, overlapMm),
        strips(heightMm, usableY, overlapMm),
        usableX - overlapMm,
        usableY - overlapMm,
        usableX,
        usableY);
  }

  /** Returns how many strips cover a length. */
  public static int strips(double lengthMm, double usableMm, double overlapMm) {
    return lengthMm <= usableMm + ROUNDING_MM
        ? 1
        : (int) Math.ceil((lengthMm - overlapMm - ROUNDING_MM) / (usableMm - overlapMm));
  }

  /** Returns how many pages there are. */
  public int pages() {
    return across * down;
  }

  private int joins() {
    return (across - 1) * down + (down - 1) * across;
  }

  /** Where a page begins in the drawing. */
  public record Tile(String name, double xMm, double yMm) {}

  /** Returns the pages, row by row, named A1, A2 … B1. */
  public List<Tile> tiles() {
    List<Tile> tiles = new ArrayList<>();
    for (int row = 0; row < down; row++) {
      for (int column = 0; column < across; column++) {
        String name = (char) ('A' + row % 26) + String.valueOf(column + 1);
        tiles.add(new Tile(name, column * stepXMm, row * stepYMm));
      }
    }
    return tiles;
  }
}
