package org.lehrcase.core.layers.cut;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Instances of the OR-Library (Christofides and Whitlock 1977; Beasley 1985) whose best values are
 * published: Hifi and Zissimopoulos 1996; Cintra, Miyazawa and others 2008.
 */
class PublishedCutsTest {
  private static final int[][] CGCUT1 = {
    {8, 4, 2, 66},
    {3, 7, 1, 35},
    {8, 2, 3, 24},
    {3, 4, 5, 17},
    {3, 3, 2, 11},
    {3, 2, 2, 8},
    {2, 1, 1, 2}
  };

  /** The sizes are from memory; both best values come out, which a wrong size would not do. */
  private static final int[][] CGCUT2 = {
    {21, 22, 1, 582}, {31, 13, 1, 403}, {9, 35, 3, 315}, {9, 24, 3, 216}, {30, 7, 2, 210},
    {11, 13, 3, 143}, {10, 14, 1, 140}, {14, 8, 3, 110}, {12, 8, 3, 94}, {13, 7, 3, 90}
  };

  private static final int[][] GCUT1 = {
    {167, 184},
    {114, 118},
    {167, 152},
    {83, 140},
    {70, 86},
    {143, 166},
    {120, 160},
    {66, 148},
    {87, 141},
    {69, 165}
  };

  private static List<CutPiece> pieces(int[][] rows, boolean limited) {
    List<CutPiece> pieces = new ArrayList<>();
    for (int[] row : rows) {
      int count = limited ? row[2] : CutPiece.AS_MANY_AS_FIT;
      pieces.add(CutChecks.piece(row[0], row[1], count, row[3]));
    }
    return pieces;
  }

  private static List<CutPiece> byArea(int[][] rows, int count) {
    List<CutPiece> pieces = new ArrayList<>();
    for (int[] row : rows) {
      pieces.add(CutChecks.piece(row[0], row[1], count, (double) row[0] * row[1]));
    }
    return pieces;
  }

  private static double best(List<CutPiece> pieces, StockSize stock, boolean turn) {
    CutPlan plan = new ValuePlanner(pieces, stock, new CutWay(0, turn)).plan();
    assertThat(plan.proven()).isTrue();
    CutChecks.follow(plan.sheets().get(0), pieces, stock, 0);
    return plan.value();
  }

  @ParameterizedTest
  @CsvSource({"true, 244", "false, 249"})
  void cgcut1(boolean limited, double value) {
    assertThat(best(pieces(CGCUT1, limited), CutChecks.stock(15, 10), false)).isEqualTo(value);
  }

  @ParameterizedTest
  @CsvSource({"true, 2892", "false, 3076"})
  void cgcut2(boolean limited, double value) {
    assertThat(best(pieces(CGCUT2, limited), CutChecks.stock(40, 70), false)).isEqualTo(value);
  }

  @Test
  void gcut1() {
    StockSize stock = CutChecks.stock(250, 250);
    int any = CutPiece.AS_MANY_AS_FIT;
    assertThat(best(byArea(GCUT1, any), stock, false)).isEqualTo(56460);
    assertThat(best(byArea(GCUT1, any), stock, true)).isEqualTo(58136);
    assertThat(best(byArea(GCUT1, 1), stock, false)).isEqualTo(48368);
  }
}
