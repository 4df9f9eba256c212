package org.lehrcase.core.layers.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Repaired depths against two other ways to find them. */
class DepthRepairProperties {
  static LongStream seeds() {
    return Seeds.some(200);
  }

  private static double[] repaired(Scene scene) {
    return DepthRepair.repaired(scene, new OcclusionGraph(scene));
  }

  private static Scene contradictory(SplittableRandom random, int most) {
    int n = random.nextInt(2, most + 1);
    var subjects = new ArrayList<Subject>();
    for (int i = 0; i < n; i++) {
      subjects.add(new Subject("s" + i, random.nextDouble(0, 4), random.nextDouble(0.5, 3)));
    }
    Set<Occlusion> pairs = new TreeSet<>();
    for (int i = 0; i < n; i++) {
      for (int j = i + 1; j < n; j++) {
        if (random.nextInt(4) == 0) {
          pairs.add(new Occlusion(i, j));
        }
      }
    }
    return Scene.of(subjects, pairs);
  }

  @Test
  void threeOnAChainMeetInTheMiddle() {
    // by hand
    Scene chain = Scenes.of(new double[] {3, 1, 2}, new int[] {0, 1}, new int[] {1, 2});
    assertThat(repaired(chain)).containsExactly(new double[] {2, 2, 2}, within(1e-9));
  }

  @Test
  void theHeavierOneMovesLess() {
    var subjects = List.of(new Subject("a", 2, 1), new Subject("b", 1, 3));
    Scene pair = Scene.of(subjects, Set.of(new Occlusion(0, 1)));
    assertThat(repaired(pair)).containsExactly(new double[] {1.25, 1.25}, within(1e-9)); // by hand
  }

  /**
   * z'(i) = max over upper sets U with i of min over lower sets L with i of mean(U ∩ L) (Robertson,
   * Wright and Dykstra 1988, from memory).
   */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void itIsTheMaxMinOfMeans(long seed) {
    Scene scene = contradictory(new SplittableRandom(seed), 7);
    double[] found = repaired(scene);
    int n = scene.size();
    for (int i = 0; i < n; i++) {
      double most = Double.NEGATIVE_INFINITY;
      for (int upper = 0; upper < 1 << n; upper++) {
        if ((upper >> i & 1) == 1 && isClosed(scene, upper)) {
          most = Math.max(most, leastMean(scene, upper, i));
        }
      }
      assertThat(found[i]).isCloseTo(most, within(1e-9));
    }
  }

  private static double leastMean(Scene scene, int upper, int with) {
    double least = Double.POSITIVE_INFINITY;
    int all = (1 << scene.size()) - 1;
    for (int lower = 0; lower <= all; lower++) {
      if ((lower >> with & 1) == 1 && isClosed(scene, all & ~lower)) {
        least = Math.min(least, mean(scene, upper & lower));
      }
    }
    return least;
  }

  /** Upper: with every subject also those behind it. */
  private static boolean isClosed(Scene scene, int set) {
    return scene.occlusions().stream()
        .allMatch(o -> (set >> o.front() & 1) == 0 || (set >> o.back() & 1) == 1);
  }

  private static double mean(Scene scene, int set) {
    double sum = 0;
    double weight = 0;
    for (int i = 0; i < scene.size(); i++) {
      if ((set >> i & 1) == 1) {
        sum += scene.subjects().get(i).weight() * scene.subjects().get(i).depth();
        weight += scene.subjects().get(i).weight();
      }
    }
    return sum / weight;
  }

  /** Projections in turn with memory (Dykstra 1983, from memory), for larger scenes. */
  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void itIsTheLimitOfProjectionsInTurn(long seed) {
    Scene scene = contradictory(new SplittableRandom(seed), 14);
    double[] z = scene.depths();
    double[] w = scene.weights();
    Occlusion[] pairs = scene.occlusions().toArray(new Occlusion[0]);
    double[][] memory = new double[pairs.length][2];
    for (int round = 0; round < 4000; round++) {
      for (int p = 0; p < pairs.length; p++) {
        int a = pairs[p].front();
        int b = pairs[p].back();
        double one = z[a] + memory[p][0];
        double two = z[b] + memory[p][1];
        double mean = (w[a] * one + w[b] * two) / (w[a] + w[b]);
        z[a] = one > two ? mean : one;
        z[b] = one > two ? mean : two;
        memory[p][0] = one - z[a];
        memory[p][1] = two - z[b];
      }
    }
    assertThat(repaired(scene)).containsExactly(z, within(1e-6));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void whatAgreesIsNotTouched(long seed) {
    Scene scene = Scenes.random(new SplittableRandom(seed), 20, 0);
    assertThat(repaired(scene)).containsExactly(scene.depths());
  }
}
