package org.lehrcase.core.layers.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.Predicate;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Small scenes of any kind against every plan that there is. */
class SheetPlanProperties {
  private static final int SHEETS = 4;

  static LongStream seeds() {
    return Seeds.some(120);
  }

  /** The least spread of all plans that keep what is asked; infinite if none does. */
  private static double least(Scene scene, Predicate<int[]> kept) {
    double least = Double.POSITIVE_INFINITY;
    int[] plan = new int[scene.size()];
    Arrays.fill(plan, 1);
    while (true) {
      if (kept.test(plan)) {
        least = Math.min(least, slowSpread(scene, plan));
      }
      int at = 0;
      while (at < plan.length && plan[at] == SHEETS) {
        plan[at++] = 1;
      }
      if (at == plan.length) {
        return least;
      }
      plan[at]++;
    }
  }

  private static double slowSpread(Scene scene, int[] plan) {
    double sum = 0;
    for (int i = 0; i < plan.length; i++) {
      double weight = 0;
      double mean = 0;
      for (int j = 0; j < plan.length; j++) {
        if (plan[i] == plan[j]) {
          weight += scene.subjects().get(j).weight();
          mean += scene.subjects().get(j).weight() * scene.subjects().get(j).depth();
        }
      }
      double off = scene.subjects().get(i).depth() - mean / weight;
      sum += scene.subjects().get(i).weight() * off * off;
    }
    return sum;
  }

  private static boolean keepsHiding(Scene scene, int[] plan) {
    return scene.occlusions().stream().allMatch(o -> plan[o.front()] < plan[o.back()])
        && scene.pins().entrySet().stream().allMatch(p -> plan[p.getKey()] == p.getValue());
  }

  private static boolean keepsOrder(Scene scene, int[] plan) {
    for (int i = 0; i < plan.length; i++) {
      for (int j = 0; j < plan.length; j++) {
        boolean nearer = scene.subjects().get(i).depth() < scene.subjects().get(j).depth();
        if (nearer && plan[i] > plan[j]) {
          return false;
        }
      }
    }
    return true;
  }

  private static int[] array(SheetPlan plan) {
    return plan.sheetOf().stream().mapToInt(Integer::intValue).toArray();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void noOrderedPlanIsBetterAndNoneIsMissed(long seed) {
    Scene scene = Scenes.random(new SplittableRandom(seed), 7, seed % 3 == 0 ? 0.2 : 0);
    double least = least(scene, p -> keepsHiding(scene, p) && keepsOrder(scene, p));
    SheetAnswer answer = new SheetPlanner(scene).plan(SHEETS, Mode.ORDERED);
    assertThat(answer instanceof NoPlan).isEqualTo(Double.isInfinite(least));
    if (answer instanceof SheetPlan plan) {
      assertThat(keepsHiding(scene, array(plan)) && keepsOrder(scene, array(plan))).isTrue();
      assertThat(plan.spread()).isCloseTo(least, within(1e-9));
      assertThat(plan.proven()).isTrue();
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void noFreePlanIsBetterAndNoneIsMissed(long seed) {
    Scene scene = Scenes.random(new SplittableRandom(seed), 7, seed % 3 == 0 ? 0.2 : 0);
    double least = least(scene, p -> keepsHiding(scene, p));
    SheetAnswer answer = new SheetPlanner(scene).plan(SHEETS, Mode.FREE);
    assertThat(answer instanceof NoPlan).isEqualTo(Double.isInfinite(least));
    if (answer instanceof SheetPlan plan) {
      assertThat(keepsHiding(scene, array(plan))).isTrue();
      assertThat(plan.spread()).isCloseTo(least, within(1e-9));
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theProofIsAsLongAsTheNeed(long seed) {
    Scene scene = Scenes.random(new SplittableRandom(seed), 9, 0);
    var planner = new SheetPlanner(scene);
    int fewest = planner.fewest(Mode.ORDERED).orElseThrow();
    assertThat(planner.plan(fewest, Mode.ORDERED)).isInstanceOf(SheetPlan.class);
    if (fewest > 1 && planner.plan(fewest - 1, Mode.ORDERED) instanceof NoPlan none) {
      assertThat(none.needed()).hasValue(fewest);
      List<Occlusion> proof = none.pairs();
      assertThat(proof.size()).isIn(0, fewest - 1);
      for (Occlusion pair : proof) {
        assertThat(scene.occlusions()).contains(pair);
      }
      for (int i = 0; i + 1 < none.chain().size(); i++) {
        Subject one = scene.subjects().get(none.chain().get(i));
        Subject two = scene.subjects().get(none.chain().get(i + 1));
        assertThat(one.depth()).isLessThanOrEqualTo(two.depth());
      }
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aRangeHoldsEverySheetOfEveryPlanAndNoOther(long seed) {
    Scene scene = Scenes.random(new SplittableRandom(seed), 6, 0);
    var planner = new SheetPlanner(scene);
    if (planner.fewest(Mode.FREE).orElseThrow() > SHEETS) {
      return;
    }
    for (int subject = 0; subject < scene.size(); subject++) {
      int at = subject;
      List<Integer> possible = new ArrayList<>();
      for (int sheet = 1; sheet <= SHEETS; sheet++) {
        int here = sheet;
        if (Double.isFinite(least(scene, p -> p[at] == here && keepsHiding(scene, p)))) {
          possible.add(sheet);
        }
      }
      int[] range = planner.range(subject, SHEETS);
      assertThat(List.of(range[0], range[1]))
          .containsExactly(possible.get(0), possible.get(possible.size() - 1));
    }
  }
}
