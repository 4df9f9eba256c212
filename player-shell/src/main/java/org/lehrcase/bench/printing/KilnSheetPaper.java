package org.lehrcase.bench.printing;

import java.util.List;
import org.lehrcase.core.glass.CurvePoint;

/**
 * What stands on a printed kiln sheet, in the words and units of the person who prints it.
 *
 * @param title what is fired
 * @param facts block, glass, kiln
 * @param sentences the two stresses and the like
 * @param curve both curves
 * @param lines what is typed in
 * @param linesNote unit of the controller, and what was changed to fit it
 * @param clock the times
 * @param cautions what can hurt
 * @param foot model, day, and how far to trust it
 * @param letter paper of 8.5 by 11 inches instead of A4
 */
public record KilnSheetPaper(
    String title,
    List<String> facts,
    List<String> sentences,
    Curves curve,
    List<Line> lines,
    String linesNote,
    List<Time> clock,
    List<String> cautions,
    String foot,
    boolean letter) {
  /** Copies the lists. */
  public KilnSheetPaper {
    facts = List.copyOf(facts);
    sentences = List.copyOf(sentences);
    lines = List.copyOf(lines);
    clock = List.copyOf(clock);
    cautions = List.copyOf(cautions);
  }

  /**
   * The curves, temperatures in the unit that is shown.
   *
   * @param mine my firing
   * @param other what lies behind it; may be empty
   * @param otherName its name
   * @param unit {@code °C} or {@code °F}
   */
  public record Curves(
      List<CurvePoint> mine, List<CurvePoint> other, String otherName, String unit) {
    /** Copies the lists. */
    public Curves {
      mine = List.copyOf(mine);
      other = List.copyOf(other);
    }
  }

  /**
   * A line of the controller.
   *
   * @param rate as typed
   * @param target as typed
   * @param hold as typed
   * @param what what it is for
   * @param ends when it ends
   */
  public record Line(String rate, String target, String hold, String what, String ends) {}

  /**
   * A time.
   *
   * @param what what happens
   * @param when when, with its spread
   * @param present whether somebody has to be there
   */
  public record Time(String what, String when, boolean present) {}
}
