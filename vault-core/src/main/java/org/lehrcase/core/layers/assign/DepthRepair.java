package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;

/**
 * Moves depths as little as possible until they agree with what hides what: least weighted squares
 * under z of the front one ≤ z of the one behind.
 *
 * <p>Exact, by splitting: a group keeps its common mean unless some of it, closed towards the back,
 * lies above the mean; the heaviest such part is a minimum cut, and both parts are then solved on
 * their own. Recursive partitioning for isotonic regression (Luss, Rosset and Shahar 2012, from
 * memory; proved again in the docs).
 */
final class DepthRepair {
  private final OcclusionGraph graph;
  private final double[] weights;
  private final double[] depths;

  private DepthRepair(Scene scene, OcclusionGraph graph) {
    this.graph = graph;
    this.weights = scene.weights();
    this.depths = scene.depths();
  }

  /** Returns the depths after repair, the very same numbers where nothing is wrong. */
  static double[] repaired(Scene scene, OcclusionGraph graph) {
    var repair = new DepthRepair(scene, graph);
    double[] found = scene.depths();
    boolean fine = scene.occlusions().stream().allMatch(o -> found[o.front()] <= found[o.back()]);
    if (!fine) {
      var all = new BitSet();
      all.set(0, scene.size());
      repair.solve(all, found);
    }
    return found;
  }

  private void solve(BitSet everything, double[] found) {
    List<BitSet> open = new ArrayList<>(List.of(everything));
    while (!open.isEmpty()) {
      BitSet group = open.remove(open.size() - 1);
      double mean = mean(group);
      BitSet upper = upper(group, mean);
      if (upper.isEmpty() || upper.cardinality() == group.cardinality()) {
        settle(group, mean, found);
      } else {
        BitSet lower = (BitSet) group.clone();
        lower.andNot(upper);
        open.add(lower);
        open.add(upper);
      }
    }
  }

  private void settle(BitSet group, double mean, double[] found) {
    boolean moved = group.cardinality() > 1;
    group.stream().forEach(i -> found[i] = moved ? mean : depths[i]);
  }

  private double mean(BitSet group) {
    double from = depths[group.nextSetBit(0)];
    double sum = group.stream().mapToDouble(i -> weights[i] * (depths[i] - from)).sum();
    return from + sum / group.stream().mapToDouble(i -> weights[i]).sum();
  }

  /** The part of greatest Σ w (z − mean) with which all that lies behind it belongs. */
  private BitSet upper(BitSet group, double mean) {
    int[] members = group.stream().toArray();
    var cut = new MinimumCut(members.length);
    double scale = 0;
    for (int i = 0; i < members.length; i++) {
      double gain = weights[members[i]] * (depths[members[i]] - mean);
      cut.offer(i, gain);
      scale = Math.max(scale, Math.abs(gain));
      for (int back : graph.behind(members[i])) {
        if (group.get(back)) {
          cut.require(i, group.get(0, back).cardinality());
        }
      }
    }
    var upper = new BitSet();
    cut.chosen(scale * 1e-12).stream().forEach(i -> upper.set(members[i]));
    return upper;
  }
}
