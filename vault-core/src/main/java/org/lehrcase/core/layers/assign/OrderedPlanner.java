package org.lehrcase.core.layers.assign;

import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The best plan that keeps the order of depth. */
final class OrderedPlanner {
  private final Scene scene;
  private final OcclusionGraph graph;
  private final Windows windows;

  /** Takes a scene whose depths agree with what hides what. */
  OrderedPlanner(Scene scene, OcclusionGraph graph, Windows windows) {
    this.scene = scene;
    this.graph = graph;
    this.windows = windows;
  }

  /**
   * A plan and whether nothing better exists.
   *
   * @param sheets by place
   * @param proven false only if too many subjects are equally deep
   */
  record Found(int[] sheets, boolean proven) {}

  /** Plans; the windows must not be empty. */
  Found plan(int sheets) {
    List<Integer> order = DisjointPairs.order(scene, windows);
    if (TiedRow.isIdle(scene, graph, order)) {
      return new Found(byOrder(order, sheets).orElseThrow(), true);
    }
    Optional<List<BitSet>> states = TiedRow.states(scene, graph, order);
    if (states.isPresent()) {
      return new Found(new TiedPartition(scene, graph, states.get()).sheets(sheets), true);
    }
    int[] early = byOrder(order, sheets).orElseThrow();
    int[] best =
        byOrder(lateOrder(), sheets)
            .filter(late -> Spread.of(scene, late) < Spread.of(scene, early))
            .orElse(early);
    return new Found(best, false);
  }

  private List<Integer> lateOrder() {
    return IntStream.range(0, scene.size())
        .boxed()
        .sorted(
            Comparator.<Integer>comparingDouble(i -> scene.subjects().get(i).depth())
                .thenComparingInt(windows::last)
                .thenComparingInt(windows::first))
        .toList();
  }

  private Optional<int[]> byOrder(List<Integer> order, int sheets) {
    var partition = new RunPartition(row(order), sheets);
    if (Double.isInfinite(partition.spread(sheets))) {
      return Optional.empty();
    }
    int[] runs = partition.runs(sheets);
    int[] sheet = new int[order.size()];
    for (int at = 0; at < runs.length; at++) {
      sheet[order.get(at)] = runs[at];
    }
    return Optional.of(sheet);
  }

  Run row(List<Integer> order) {
    int n = order.size();
    int[] start = new int[n];
    for (int at = 0; at < n; at++) {
      start[at] = at == 0 ? 0 : start[at - 1];
      for (int near = at - 1; near >= start[at]; near--) {
        if (apart(order.get(near), order.get(at))) {
          start[at] = near + 1;
        }
      }
    }
    return new Run(
        order.stream().mapToDouble(i -> scene.subjects().get(i).depth()).toArray(),
        order.stream().mapToDouble(i -> scene.subjects().get(i).weight()).toArray(),
        start,
        order.stream().mapToInt(scene::pin).toArray());
  }

  private boolean apart(int one, int two) {
    boolean pinnedApart =
        scene.pin(one) > 0 && scene.pin(two) > 0 && scene.pin(one) != scene.pin(two);
    return pinnedApart || graph.conflicts(one).get(two);
  }
}
