package org.lehrcase.core.layers.assign;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What goes on which sheet.
 *
 * @param sheetOf sheet of each subject, by its place; the first sheet is 1
 * @param sheets how many sheets there are, clear ones with them
 * @param mode what was asked of the order; a free plan of a large scene comes out ordered
 * @param proven whether no plan of this mode is better
 * @param spread Σ w (z − mean of the sheet)², with the depths after repair
 * @param fit share of the whole spread that the sheets take away, 0 to 1
 * @param worstSize greatest wrong size within a sheet, as a share
 * @param moves depths that were changed because an overlap says otherwise
 */
public record SheetPlan(
    List<Integer> sheetOf,
    int sheets,
    Mode mode,
    boolean proven,
    double spread,
    double fit,
    double worstSize,
    List<Move> moves)
    implements SheetAnswer {
  /** Copies the lists. */
  public SheetPlan {
    sheetOf = List.copyOf(sheetOf);
    moves = List.copyOf(moves);
  }

  /** Returns a proven plan in which no depth was moved. */
  static SheetPlan of(Scene scene, int[] sheetOf, int sheets, Mode mode) {
    double spread = Spread.of(scene, sheetOf);
    double whole = Spread.whole(scene);
    double fit = whole > 0 ? Math.max(0, 1 - spread / whole) : 1;
    List<Integer> places = Arrays.stream(sheetOf).boxed().toList();
    double worst = Spread.worstSize(scene, sheetOf);
    return new SheetPlan(places, sheets, mode, true, spread, fit, worst, List.of());
  }

  /** Returns the same plan with what is said about its making. */
  SheetPlan madeWith(boolean isProven, List<Move> moved) {
    return new SheetPlan(sheetOf, sheets, mode, isProven, spread, fit, worstSize, moved);
  }

  /** Returns the subjects of a sheet. */
  public List<Integer> on(int sheet) {
    return IntStream.range(0, sheetOf.size()).filter(i -> sheetOf.get(i) == sheet).boxed().toList();
  }

  /**
   * A subject whose size says one thing and whose overlaps another.
   *
   * @param subject its place
   * @param to depth after repair
   * @param sizeFactor how much farther away it is taken to be; below 1 nearer
   * @param because a pair that it is part of and that was broken before
   */
  public record Move(int subject, double to, double sizeFactor, Occlusion because) {
    /** Says whether anybody would notice: more than 5 % in size. */
    public boolean isNoticeable() {
      return Math.abs(Math.log(sizeFactor)) > Math.log(1.05);
    }
  }
}
