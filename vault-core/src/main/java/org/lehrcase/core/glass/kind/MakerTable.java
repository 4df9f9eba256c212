package org.lehrcase.core.glass.kind;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A maker's own annealing table for blocks that lose heat from both faces, as typed in by the
 * person who holds it.
 *
 * @param soakC soak temperature of the table
 * @param rows by thickness
 * @param source whose table it is
 */
public record MakerTable(double soakC, List<MakerRow> rows, String source) {
  /**
   * Sorts the rows.
   *
   * @throws IllegalArgumentException if there is none
   */
  public MakerTable {
    if (rows.isEmpty()) {
      throw new IllegalArgumentException("the maker's table has no rows");
    }
    var sorted = new ArrayList<>(rows);
    sorted.sort(Comparator.comparingDouble(MakerRow::thicknessMm));
    rows = List.copyOf(sorted);
  }

  /**
   * Returns the row for a thickness: between two rows rates and soak are interpolated on
   * logarithmic scales, below the thinnest row its own figures stand.
   *
   * @return empty if the block is thicker than the table goes
   */
  public Optional<MakerRow> at(double thicknessMm) {
    MakerRow before = rows.get(0);
    for (MakerRow row : rows) {
      if (row.thicknessMm() >= thicknessMm) {
        return Optional.of(between(before, row, Math.max(thicknessMm, before.thicknessMm())));
      }
      before = row;
    }
    return Optional.empty();
  }

  private static MakerRow between(MakerRow thin, MakerRow thick, double thicknessMm) {
    if (thin.thicknessMm() >= thick.thicknessMm()) {
      return thick;
    }
    double share =
        Math.log(thicknessMm / thin.thicknessMm())
            / Math.log(thick.thicknessMm() / thin.thicknessMm());
    List<Double> rates = new ArrayList<>();
    for (int slope = 0; slope < MakerRow.SLOPES; slope++) {
      rates.add(mixed(thin.ratesCPerHour().get(slope), thick.ratesCPerHour().get(slope), share));
    }
    double soak = thin.soakHours() + share * (thick.soakHours() - thin.soakHours());
    return new MakerRow(thicknessMm, Math.max(soak, thin.soakHours()), rates);
  }

  private static double mixed(double thin, double thick, double share) {
    return thin * Math.pow(thick / thin, share);
  }
}
