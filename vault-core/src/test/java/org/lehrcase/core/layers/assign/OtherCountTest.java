package org.lehrcase.core.layers.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Another sheet count from a plan that exists. */
class OtherCountTest {
  private static final Scene FIVE =
      Scenes.of(new double[] {0, 1, 1.1, 3, 3.5}, new int[] {0, 1}, new int[] {2, 3});
  private static final List<Integer> PLAN = List.of(1, 2, 3, 4, 5);

  @Test
  void neighboursThatAreCloseMergeFirst() {
    SheetPlan four = (SheetPlan) new OtherCount(FIVE, PLAN).to(4);
    assertThat(four.sheetOf()).containsExactly(1, 2, 2, 3, 4);
    assertThat(four.spread()).isCloseTo(0.005, within(1e-12)); // two at 0.05 each, by hand
    SheetPlan three = (SheetPlan) new OtherCount(FIVE, PLAN).to(3);
    assertThat(three.sheetOf()).containsExactly(1, 2, 2, 3, 3);
  }

  @Test
  void whatOverlapsIsNeverMergedAndIsNamed() {
    NoPlan none = (NoPlan) new OtherCount(FIVE, PLAN).to(2);
    assertThat(none.pairs()).containsExactly(new Occlusion(0, 1), new Occlusion(2, 3));
    assertThat(none.needed()).hasValue(3);
    assertThat(none.words(FIVE)).contains("a – b, c – d");
  }

  @Test
  void theSameCountChangesNothing() {
    SheetPlan same = (SheetPlan) new OtherCount(FIVE, List.of(1, 2, 2, 4, 4)).to(4);
    assertThat(same.sheetOf()).containsExactly(1, 2, 2, 4, 4);
  }

  @Test
  void theSheetWhoseDivisionHelpsMostIsDivided() {
    SheetPlan three = (SheetPlan) new OtherCount(FIVE, List.of(1, 2, 2, 3, 3)).to(4);
    assertThat(three.sheetOf()).containsExactly(1, 2, 2, 3, 4);
  }

  @Test
  void sheetsBeyondTheSubjectsStayClear() {
    SheetPlan seven = (SheetPlan) new OtherCount(FIVE, PLAN).to(7);
    assertThat(seven.sheets()).isEqualTo(7);
    assertThat(seven.sheetOf()).doesNotHaveDuplicates();
    assertThat(seven.spread()).isZero();
  }

  @Test
  void aPlanThatHidesTheWrongWayRoundIsRefusedByName() {
    assertThatThrownBy(() -> new OtherCount(FIVE, List.of(2, 1, 2, 3, 3)))
        .hasMessageContaining("a – b");
    assertThatThrownBy(() -> new OtherCount(FIVE, List.of(1, 2))).hasMessageContaining("sheet_of");
    assertThatThrownBy(() -> new OtherCount(FIVE, PLAN).to(0)).hasMessageContaining("sheets");
  }

  static LongStream seeds() {
    return Seeds.some(100);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void everyCountKeepsWhatHidesWhatAndTheOrderOfThePlan(long seed) {
    Scene scene = Scenes.random(new SplittableRandom(seed), 12, 0);
    var planner = new SheetPlanner(scene);
    int fewest = planner.fewest(Mode.ORDERED).orElseThrow();
    var plan = (SheetPlan) planner.plan(Math.min(12, fewest + 2), Mode.ORDERED);
    for (int count = 1; count <= 15; count++) {
      if (new OtherCount(scene, plan.sheetOf()).to(count) instanceof SheetPlan other) {
        for (Occlusion o : scene.occlusions()) {
          assertThat(other.sheetOf().get(o.front())).isLessThan(other.sheetOf().get(o.back()));
        }
        assertThat(other.sheetOf()).allMatch(s -> s >= 1 && s <= other.sheets());
      } else {
        assertThat(count).isLessThan(Math.min(12, fewest + 2));
      }
    }
  }
}
