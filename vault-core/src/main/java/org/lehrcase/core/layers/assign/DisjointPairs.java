package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Why an ordered plan needs its sheets: pairs that may not share a sheet and follow each other in
 * the order of depth, so that each forces a boundary of its own. As many pairs as the sweep from
 * the front finds boundaries, which is why the sweep cannot be beaten.
 */
final class DisjointPairs {
  private DisjointPairs() {}

  /** Returns the pairs, from the front. */
  static List<Occlusion> of(Scene scene, OcclusionGraph graph, Windows windows) {
    List<Integer> order = order(scene, windows);
    List<Occlusion> pairs = new ArrayList<>();
    int sheetStart = 0;
    for (int at = 0; at < order.size(); at++) {
      for (int near = at - 1; near >= sheetStart; near--) {
        if (graph.conflicts(order.get(at)).get(order.get(near))) {
          pairs.add(new Occlusion(order.get(near), order.get(at)));
          sheetStart = at;
        }
      }
    }
    return pairs;
  }

  /** Nearest first; of equally deep ones whoever may lie farther in front. */
  static List<Integer> order(Scene scene, Windows windows) {
    return IntStream.range(0, scene.size())
        .boxed()
        .sorted(
            Comparator.<Integer>comparingDouble(i -> scene.subjects().get(i).depth())
                .thenComparingInt(windows::first)
                .thenComparingInt(i -> i))
        .toList();
  }
}
