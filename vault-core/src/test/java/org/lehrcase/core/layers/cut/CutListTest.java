package org.lehrcase.core.layers.cut;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cut lists that can be checked by hand. */
class CutListTest {
  private static final CutWay SNAP = new CutWay(0, true);
  private static final int ANY = CutPiece.AS_MANY_AS_FIT;

  private static CutPlan value(CutPiece piece, StockSize stock, CutWay way) {
    List<CutPiece> pieces = List.of(piece);
    CutPlan plan = new ValuePlanner(pieces, stock, way).plan();
    plan.sheets().forEach(s -> CutChecks.follow(s, pieces, stock, way.kerfUm()));
    return plan;
  }

  private static CutPlan list(List<CutPiece> pieces, List<StockSize> stock, CutWay way) {
    CutPlan plan = new StockPlanner(pieces, stock, way).plan();
    assertThat(plan.left()).containsOnly(0);
    for (CutSheet sheet : plan.sheets()) {
      CutChecks.follow(sheet, pieces, stock.get(sheet.stock()), way.kerfUm());
    }
    return plan;
  }

  @Test
  void fourRoundAPinwheelCannotBeScoredOut() {
    // a 3 by 2 pinwheel of four fits into 5 by 5, and no cut goes from edge to edge of it
    CutPlan plan = value(CutChecks.piece(3, 2, ANY, 1), CutChecks.stock(5, 5), SNAP);
    assertThat(plan.value()).isEqualTo(3);
    assertThat(plan.proven()).isTrue();
  }

  @Test
  void fourOfASizeTakeFiveScores() {
    // by hand: three scores part four pieces, two more take the waste off
    CutPlan plan = value(CutChecks.piece(254, 203, ANY, 1), CutChecks.stock(580, 480), SNAP);
    assertThat(plan.value()).isEqualTo(4);
    assertThat(plan.sheets().get(0).scores()).hasSize(5);
  }

  @ParameterizedTest
  @CsvSource({"7, 2", "9, 3"})
  void sheetsOfAStackFromStock(int count, int sheets) {
    List<CutPiece> pieces = List.of(CutChecks.piece(254, 203, count, 0));
    CutPlan plan = list(pieces, List.of(CutChecks.stock(580, 480)), SNAP);
    assertThat(plan.sheets()).hasSize(sheets);
    assertThat(plan.proven()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"304, 3", "303, 2"}) // 3 · 100 and two cuts of 2
  void aSawTakesItsKerfBetweenPiecesOnly(int stockMm, int pieces) {
    CutPlan plan =
        value(
            CutChecks.piece(100, 50, ANY, 1),
            CutChecks.stock(stockMm, 50),
            new CutWay(2000, false));
    assertThat(plan.value()).isEqualTo(pieces);
  }

  @Test
  void twoKindsOfStockAreMixedByPrice() {
    // by hand: six from the large one at 10, one from the small one at 4
    List<StockSize> stock =
        List.of(
            new StockSize(500_000, 400_000, StockSize.ANY, 10),
            new StockSize(300_000, 250_000, StockSize.ANY, 4));
    CutPlan plan = list(List.of(CutChecks.piece(200, 150, 7, 0)), stock, SNAP);
    assertThat(plan.price()).isEqualTo(14);
    assertThat(plan.proven()).isTrue();
  }

  @Test
  void anOffCutAtHandIsUsedOnce() {
    List<StockSize> stock =
        List.of(
            new StockSize(210_000, 160_000, 1, 0.001),
            new StockSize(420_000, 160_000, StockSize.ANY, 10));
    CutPlan plan = list(List.of(CutChecks.piece(200, 150, 3, 0)), stock, SNAP);
    assertThat(plan.sheets()).hasSize(2);
    assertThat(plan.price()).isEqualTo(10.001);
  }

  @Test
  void theLargestRestStaysWhole() {
    CutPlan plan = value(CutChecks.piece(100, 80, 1, 1), CutChecks.stock(300, 100), SNAP);
    CutSheet sheet = plan.sheets().get(0);
    assertThat(sheet.largestOffCut().orElseThrow().areaUm2()).isEqualTo(220L * 100 * 1_000_000);
    assertThat(sheet.scores()).hasSize(1); // turned, it needs no second one
  }

  @Test
  void sixtyPiecesOfManySizesHaveABound() {
    List<CutPiece> pieces = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      pieces.add(CutChecks.piece(60 + 17 * i, 45 + 23 * (i * 5 % 12), 5, 0));
    }
    CutPlan plan = list(pieces, List.of(CutChecks.stock(610, 460)), SNAP);
    assertThat(plan.sheets().size()).isGreaterThanOrEqualTo((int) plan.bound());
    assertThat(plan.price()).isLessThanOrEqualTo(plan.bound() + 2);
  }

  @Test
  void twoLargePiecesNeverShareASheet() {
    List<CutPiece> pieces = new ArrayList<>();
    for (int i = 0; i < 14; i++) {
      pieces.add(CutChecks.piece(51 + i, 52 + i, 1, 0));
    }
    CutPlan plan = list(pieces, List.of(CutChecks.stock(100, 100)), SNAP);
    assertThat(plan.sheets()).hasSize(14);
    assertThat(plan.proven()).isTrue();
  }

  @Test
  void whatCannotBeCutIsNamed() {
    StockSize small = CutChecks.stock(100, 100);
    assertThatThrownBy(
            () -> new StockPlanner(List.of(CutChecks.piece(101, 9, 1, 0)), List.of(small), SNAP))
        .hasMessageContaining("101x9");
    assertThatThrownBy(
            () -> new StockPlanner(List.of(CutChecks.piece(9, 9, ANY, 0)), List.of(small), SNAP))
        .hasMessageContaining("count");
    assertThatThrownBy(() -> new StockPlanner(List.of(), List.of(small), SNAP))
        .hasMessageContaining("pieces");
    var one = new StockSize(100_000, 100_000, 1, 1);
    var planner = new StockPlanner(List.of(CutChecks.piece(90, 90, 2, 0)), List.of(one), SNAP);
    assertThatThrownBy(planner::plan).hasMessageContaining("not enough");
    assertThatThrownBy(() -> CutChecks.piece(0, 1, 1, 0)).hasMessageContaining("w_mm");
    assertThatThrownBy(() -> CutChecks.piece(1, 1, 0, 0)).hasMessageContaining("count");
    assertThatThrownBy(() -> CutChecks.piece(1, 1, 1, -1)).hasMessageContaining("value");
    assertThatThrownBy(() -> CutChecks.stock(0, 1)).hasMessageContaining("stock_mm");
    assertThatThrownBy(() -> new StockSize(1, 1, 0, 1)).hasMessageContaining("count");
    assertThatThrownBy(() -> new StockSize(1, 1, 1, 0)).hasMessageContaining("price");
    assertThatThrownBy(() -> new CutWay(-1, true)).hasMessageContaining("kerf");
  }

  @Test
  void nothingFitsAndNothingIsCut() {
    CutPlan plan = value(CutChecks.piece(300, 300, 2, 5), CutChecks.stock(100, 100), SNAP);
    assertThat(plan.sheets()).isEmpty();
    assertThat(plan.left()).containsExactly(2);
    assertThat(plan.proven()).isTrue();
  }

  @Test
  void stripsTooNarrowToSnapAreNamed() {
    CutPlan plan =
        value(CutChecks.piece(100, 80, 1, 1), CutChecks.stock(112, 200), new CutWay(0, false));
    CutSheet sheet = plan.sheets().get(0);
    // 120 mm are cut off below first, then 12 mm on the right
    assertThat(NarrowStrips.of(sheet, 0, 3000)).containsExactly(1);
    assertThat(NarrowStrips.of(sheet, 0, 4000)).containsExactly(1);
    assertThat(NarrowStrips.of(sheet, 2000, 3000)).isEmpty();
    assertThat(NarrowStrips.of(sheet, 0, 41_000)).containsExactly(0, 1);
  }
}
