package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.List;

/**
 * A piece in one of its two positions, one kerf larger each way.
 *
 * @param piece its place in the list
 * @param turned whether it is turned by a quarter
 * @param width micrometres
 * @param height micrometres
 * @param value of the piece
 */
record Fit(int piece, boolean turned, int width, int height, double value) {
  /** Returns every position of every piece that fits into a rectangle. */
  static List<Fit> all(List<CutPiece> pieces, CutWay way, int width, int height) {
    List<Fit> fits = new ArrayList<>();
    for (int i = 0; i < pieces.size(); i++) {
      CutPiece piece = pieces.get(i);
      int w = piece.widthUm() + way.kerfUm();
      int h = piece.heightUm() + way.kerfUm();
      if (w <= width && h <= height) {
        fits.add(new Fit(i, false, w, h, piece.value()));
      }
      if (way.turn() && w != h && h <= width && w <= height) {
        fits.add(new Fit(i, true, h, w, piece.value()));
      }
    }
    return fits;
  }
}
