package org.lehrcase.core.layers.paper;

import java.util.List;
import java.util.Optional;

/**
 * What a ruler says that was printed 100 mm long both ways.
 *
 * @param acrossMm read along x
 * @param downMm read along y
 */
public record RulerReading(double acrossMm, double downMm) {
  private static final double FAITHFUL = 0.003;
  private static final double CORRECTABLE = 0.03;
  private static final double ALIKE = 0.4;

  /**
   * Checks that something was read.
   *
   * @throws IllegalArgumentException if not
   */
  public RulerReading {
    if (!(acrossMm > 10 && acrossMm < 1000 && downMm > 10 && downMm < 1000)) {
      throw new IllegalArgumentException("type what the ruler reads, in mm, near 100");
    }
  }

  /** What to do about it. */
  public enum Advice {
    /** Within 0.3 %: good enough for glass. */
    GOOD,
    /** Within 3 %: a corrected print is offered. */
    CORRECT,
    /** Beyond: print again at 100 %. */
    PRINT_AGAIN
  }

  private record Cause(double reads, String words) {}

  private static final List<Cause> CAUSES =
      List.of(
          new Cause(
              100 * Paper.LETTER.fitted(Paper.A4, 0),
              "an A4 page fitted on Letter paper, or shrunk into the printer's margins"),
          new Cause(100 * Paper.A4.fitted(Paper.LETTER, 0), "a Letter page fitted on A4 paper"),
          new Cause(75, "points taken for pixels by the printing program"),
          new Cause(100 * 96.0 / 72, "pixels taken for points by the printing program"));

  private double off() {
    return Math.max(Math.abs(acrossMm - 100), Math.abs(downMm - 100)) / 100;
  }

  /** Returns what to do. */
  public Advice advice() {
    if (off() <= FAITHFUL + 1e-12) {
      return Advice.GOOD;
    }
    return off() <= CORRECTABLE + 1e-12 ? Advice.CORRECT : Advice.PRINT_AGAIN;
  }

  /** Returns the likely cause, if both directions tell the same. */
  public Optional<String> cause() {
    if (advice() == Advice.GOOD) {
      return Optional.empty();
    }
    if (Math.abs(acrossMm - downMm) > ALIKE / 2) {
      return off() <= 0.015
          ? Optional.of("the printer's own feed: paper stretches and shrinks in its heat")
          : Optional.empty();
    }
    return CAUSES.stream()
        .filter(c -> Math.abs(acrossMm - c.reads) <= ALIKE)
        .map(Cause::words)
        .findFirst();
  }

  /** Returns by how much the next print is drawn larger across and down; 1 unless correctable. */
  public double[] correction() {
    return advice() == Advice.CORRECT
        ? new double[] {100 / acrossMm, 100 / downMm}
        : new double[] {1, 1};
  }
}
