package org.lehrcase.bench.printing;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.layers.paper.Paper;
import org.lehrcase.core.layers.paper.Tiling;

/**
 * How a template of true size is spread over sheets of A4, as on the page that prints it. All
 * lengths are in millimetres, from the upper left.
 *
 * @param lying whether the paper lies on its side
 * @param columns sheets beside each other
 * @param rows sheets below each other
 * @param widthMm of the template
 * @param heightMm of the template
 */
record TemplateTiles(boolean lying, int columns, int rows, double widthMm, double heightMm) {
  static final double MARGIN_MM = 10;
  static final double RULER_MM = 24;
  static final double OVERLAP_MM = 10;

  /** More sheets than anybody tapes together: then the stated size is a mistake. */
  private static final int MOST_SHEETS = 60;

  private static final double NEAR_MM = 2;

  /** A part of the template on one sheet. */
  record Tile(double xMm, double yMm, double wideMm, double highMm) {}

  /** Upright or lying, whichever needs fewer sheets. */
  static TemplateTiles of(double widthMm, double heightMm) {
    TemplateTiles upright = one(false, widthMm, heightMm);
    TemplateTiles lying = one(true, widthMm, heightMm);
    return lying.isWholeSheet() || (double) lying.columns * lying.rows < upright.sheets()
        ? lying
        : upright;
  }

  private static TemplateTiles one(boolean lying, double widthMm, double heightMm) {
    TemplateTiles bare = new TemplateTiles(lying, 1, 1, widthMm, heightMm);
    return bare.isWholeSheet()
        ? bare
        : new TemplateTiles(
            lying,
            Tiling.strips(widthMm, bare.roomXMm(), OVERLAP_MM),
            Tiling.strips(heightMm, bare.roomYMm(), OVERLAP_MM),
            widthMm,
            heightMm);
  }

  Paper paper() {
    return lying ? Paper.A4.turned() : Paper.A4;
  }

  /** Drawn as a whole sheet of paper: it goes on edge to edge, and its ruler on another. */
  boolean isWholeSheet() {
    return Math.abs(widthMm - paper().widthMm()) < NEAR_MM
        && Math.abs(heightMm - paper().heightMm()) < NEAR_MM;
  }

  private double roomXMm() {
    return paper().widthMm() - 2 * MARGIN_MM;
  }

  private double roomYMm() {
    return paper().heightMm() - 2 * MARGIN_MM - RULER_MM;
  }

  double sheets() {
    return (double) columns * rows;
  }

  boolean isTooLarge() {
    return sheets() > MOST_SHEETS;
  }

  /** The sheets, row by row; not for what is too large. */
  List<Tile> tiles() {
    List<Tile> tiles = new ArrayList<>();
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        double x = column * (roomXMm() - OVERLAP_MM);
        double y = row * (roomYMm() - OVERLAP_MM);
        tiles.add(
            new Tile(x, y, Math.min(roomXMm(), widthMm - x), Math.min(roomYMm(), heightMm - y)));
      }
    }
    return tiles;
  }
}
