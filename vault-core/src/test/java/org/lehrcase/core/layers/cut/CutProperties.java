package org.lehrcase.core.layers.cut;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Small lists against everything that can be cut at all. */
class CutProperties {
  static LongStream seeds() {
    return Seeds.some(50);
  }

  private static List<CutPiece> pieces(SplittableRandom random, int most, boolean mayBeFree) {
    List<CutPiece> pieces = new ArrayList<>();
    int kinds = random.nextInt(1, 4);
    for (int i = 0; i < kinds; i++) {
      boolean free = mayBeFree && random.nextInt(3) == 0;
      int count = free ? CutPiece.AS_MANY_AS_FIT : random.nextInt(1, 4);
      int w = random.nextInt(1, most + 1);
      pieces.add(CutChecks.piece(w, random.nextInt(1, most + 1), count, random.nextInt(1, 30)));
    }
    return pieces;
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void nothingMoreValuableCanBeCut(long seed) {
    var random = new SplittableRandom(seed);
    List<CutPiece> pieces = pieces(random, 5, true);
    int w = random.nextInt(2, 8);
    int h = random.nextInt(2, 8);
    boolean turn = random.nextBoolean();
    StockSize stock = CutChecks.stock(w, h);
    double most = 0;
    for (List<Integer> counts : new CutChecks.Everything(limited(pieces, w * h), turn).from(w, h)) {
      double value = 0;
      for (int i = 0; i < counts.size(); i++) {
        value += counts.get(i) * pieces.get(i).value();
      }
      most = Math.max(most, value);
    }
    CutPlan plan = new ValuePlanner(pieces, stock, new CutWay(0, turn)).plan();
    assertThat(plan.value()).isCloseTo(most, within(1e-9));
    assertThat(plan.proven()).isTrue();
    plan.sheets().forEach(s -> CutChecks.follow(s, pieces, stock, 0));
  }

  /** So that trying everything ends: no more than two of what is free, in both ways to cut. */
  private static List<CutPiece> limited(List<CutPiece> pieces, int area) {
    List<CutPiece> all = new ArrayList<>();
    for (CutPiece p : pieces) {
      long most = (long) area * 1_000_000 / ((long) p.widthUm() * p.heightUm());
      int count = p.count() < 0 ? (int) Math.max(1, most) : p.count();
      all.add(new CutPiece(p.name(), p.widthUm(), p.heightUm(), count, p.value()));
    }
    return all;
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void noFewerStockSheetsWillDo(long seed) {
    var random = new SplittableRandom(seed);
    int w = random.nextInt(3, 8);
    int h = random.nextInt(3, 8);
    List<CutPiece> pieces = pieces(random, 3, false);
    boolean turn = random.nextBoolean();
    StockSize stock = CutChecks.stock(w, h);
    List<Integer> demand = pieces.stream().map(CutPiece::count).toList();
    int fewest = fewest(demand, new CutChecks.Everything(pieces, turn).from(w, h), new HashMap<>());
    var planner = new StockPlanner(pieces, List.of(stock), new CutWay(0, turn));
    CutPlan plan = planner.plan();
    assertThat(plan.sheets()).hasSize(fewest);
    assertThat(plan.proven()).isTrue();
    assertThat(planner.lowerBound()).isLessThanOrEqualTo(fewest);
    plan.sheets().forEach(s -> CutChecks.follow(s, pieces, stock, 0));
  }

  private static int fewest(
      List<Integer> open, Set<List<Integer>> ways, Map<List<Integer>, Integer> known) {
    if (Collections.max(open) <= 0) {
      return 0;
    }
    if (!known.containsKey(open)) {
      int least = Integer.MAX_VALUE;
      for (List<Integer> way : ways) {
        List<Integer> rest = new ArrayList<>();
        boolean inside = Collections.max(way) > 0;
        for (int i = 0; i < way.size(); i++) {
          rest.add(open.get(i) - way.get(i));
          inside &= rest.get(i) >= 0;
        }
        if (inside) {
          least = Math.min(least, 1 + fewest(rest, ways, known));
        }
      }
      known.put(open, least);
    }
    return known.get(open);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aSawedListIsTheSnappedOneOfLargerPieces(long seed) {
    var random = new SplittableRandom(seed);
    List<CutPiece> pieces = new ArrayList<>();
    List<CutPiece> larger = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      int w = random.nextInt(30, 200);
      int h = random.nextInt(30, 200);
      int count = random.nextInt(1, 5);
      pieces.add(CutChecks.piece(w, h, count, w * h));
      larger.add(CutChecks.piece(w + 2, h + 2, count, w * h));
    }
    CutPlan sawed =
        new ValuePlanner(pieces, CutChecks.stock(400, 300), new CutWay(2000, true)).plan();
    CutPlan snapped =
        new ValuePlanner(larger, CutChecks.stock(402, 302), new CutWay(0, true)).plan();
    if (sawed.proven() && snapped.proven()) {
      assertThat(sawed.value()).isEqualTo(snapped.value());
    }
    CutChecks.follow(sawed.sheets().get(0), pieces, CutChecks.stock(400, 300), 2000);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void longListsComeOutWholeAndNeverBelowTheirBound(long seed) {
    var random = new SplittableRandom(seed);
    List<CutPiece> pieces = new ArrayList<>();
    for (int i = 0; i < 9; i++) {
      int w = random.nextInt(40, 300);
      pieces.add(CutChecks.piece(w, random.nextInt(40, 250), random.nextInt(1, 8), 0));
    }
    StockSize stock = CutChecks.stock(500, 400);
    CutPlan plan = new StockPlanner(pieces, List.of(stock), new CutWay(0, true)).plan();
    assertThat(plan.left()).containsOnly(0);
    assertThat(plan.price()).isGreaterThanOrEqualTo(plan.bound());
    plan.sheets().forEach(s -> CutChecks.follow(s, pieces, stock, 0));
  }
}
