package org.lehrcase.core.layers.cut;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One stock sheet, cut.
 *
 * @param stock place of its kind in the list
 * @param placed the pieces on it
 * @param scores in the order in which to make them; each runs from edge to edge of a part that is
 *     there when it is its turn
 * @param offCuts what is left
 */
public record CutSheet(int stock, List<Placed> placed, List<Score> scores, List<Rect> offCuts) {
  /** Copies the lists. */
  public CutSheet {
    placed = List.copyOf(placed);
    scores = List.copyOf(scores);
    offCuts = List.copyOf(offCuts);
  }

  /**
   * A rectangle of the stock sheet.
   *
   * @param xUm left edge, micrometres from the left edge of the stock
   * @param yUm upper edge
   * @param widthUm width
   * @param heightUm height
   */
  public record Rect(int xUm, int yUm, int widthUm, int heightUm) {
    /** Returns the area in square micrometres. */
    public long areaUm2() {
      return (long) widthUm * heightUm;
    }
  }

  /**
   * A piece where it lies.
   *
   * @param piece its place in the list
   * @param turned whether it is turned by a quarter
   * @param at where
   */
  public record Placed(int piece, boolean turned, Rect at) {}

  /**
   * A score, or the path of a saw.
   *
   * @param upright whether it runs from top to bottom
   * @param part the part that it divides
   * @param atUm its distance from the left or upper edge of the stock; a saw takes its kerf to the
   *     right of it or below
   */
  public record Score(boolean upright, Rect part, int atUm) {}

  /** Returns the largest rectangle that is left. */
  public Optional<Rect> largestOffCut() {
    return offCuts.stream().max(Comparator.comparingLong(Rect::areaUm2));
  }
}
