package org.lehrcase.core.glass.kind;

import java.util.List;

/**
 * One thickness in a maker's annealing table.
 *
 * @param thicknessMm thickness of the block, for the faces that the table names
 * @param soakHours how long the soak lasts
 * @param ratesCPerHour the three slopes of cooling, each above 0
 */
public record MakerRow(double thicknessMm, double soakHours, List<Double> ratesCPerHour) {
  /** Slopes of cooling that a table has. */
  public static final int SLOPES = 3;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if one is missing, not a number or not above 0
   */
  public MakerRow {
    ratesCPerHour = List.copyOf(ratesCPerHour);
    boolean sound = thicknessMm > 0 && soakHours >= 0 && ratesCPerHour.size() == SLOPES;
    if (!sound || ratesCPerHour.stream().anyMatch(r -> !(r > 0 && Double.isFinite(r)))) {
      throw new IllegalArgumentException(
          "a row of the maker's table needs a thickness, soak hours and three rates above 0");
    }
  }
}
