package org.lehrcase.core.layers.assign;

import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/** The best ordered plan over the states of a {@link TiedRow}; exact, by dynamic programming. */
final class TiedPartition {
  private static final double SAME = 1e-12;

  private final Scene scene;
  private final OcclusionGraph graph;
  private final List<BitSet> states;
  private final double[][] cost;
  private final int[][] pin;
  private final double mean;
  private double grain;
  private double[][] spread = new double[0][0];
  private int[][] used = new int[0][0];
  private int[][] from = new int[0][0];

  TiedPartition(Scene scene, OcclusionGraph graph, List<BitSet> states) {
    this.scene = scene;
    this.graph = graph;
    this.states = states;
    this.mean = Arrays.stream(scene.depths()).average().orElse(0);
    int n = states.size();
    cost = new double[n][n];
    pin = new int[n][n];
    for (int from = 0; from < n; from++) {
      for (int to = from + 1; to < n; to++) {
        weigh(from, to);
      }
    }
  }

  private void weigh(int from, int to) {
    cost[from][to] = Double.POSITIVE_INFINITY;
    BitSet sheet = (BitSet) states.get(to).clone();
    sheet.andNot(states.get(from));
    boolean grows =
        sheet.cardinality() + states.get(from).cardinality() == states.get(to).cardinality();
    if (grows && shareable(sheet)) {
      double[] sums = new double[3];
      sheet.stream().forEach(i -> add(sums, scene.subjects().get(i)));
      cost[from][to] = Math.max(0, sums[2] - sums[1] * sums[1] / sums[0]);
      grain = Math.max(grain, SAME * sums[2]);
      pin[from][to] = sheet.stream().map(scene::pin).max().orElse(0);
    }
  }

  private void add(double[] sums, Subject subject) {
    double z = subject.depth() - mean;
    sums[0] += subject.weight();
    sums[1] += subject.weight() * z;
    sums[2] += subject.weight() * z * z;
  }

  private boolean shareable(BitSet sheet) {
    int pinned = 0;
    for (int i = sheet.nextSetBit(0); i >= 0; i = sheet.nextSetBit(i + 1)) {
      int own = scene.pin(i);
      if (graph.conflicts(i).intersects(sheet) || own > 0 && pinned > 0 && own != pinned) {
        return false;
      }
      pinned = Math.max(pinned, own);
    }
    return true;
  }

  /** Returns the sheet of each subject by its place in the scene; the windows must not be empty. */
  int[] sheets(int sheets) {
    int n = states.size();
    spread = new double[sheets + 1][n];
    used = new int[sheets + 1][n];
    from = new int[sheets + 1][n];
    Arrays.fill(spread[0], 1, n, Double.POSITIVE_INFINITY);
    for (int k = 1; k <= sheets; k++) {
      for (int to = 0; to < n; to++) {
        fill(k, to);
      }
    }
    if (Double.isInfinite(spread[sheets][n - 1])) {
      throw new IllegalStateException("this row cannot be cut so");
    }
    return trace(sheets);
  }

  private void fill(int k, int to) {
    spread[k][to] = spread[k - 1][to];
    used[k][to] = used[k - 1][to];
    from[k][to] = to;
    for (int at = to - 1; at >= 0; at--) {
      double total = spread[k - 1][at] + cost[at][to];
      int count = used[k - 1][at] + 1;
      boolean allowed = Double.isFinite(total) && (pin[at][to] == 0 || pin[at][to] == k);
      boolean better = total < spread[k][to] - grain;
      boolean same = total <= spread[k][to] + grain && count > used[k][to];
      if (allowed && (better || same)) {
        spread[k][to] = total;
        used[k][to] = count;
        from[k][to] = at;
      }
    }
  }

  private int[] trace(int sheets) {
    int[] sheet = new int[scene.size()];
    int at = states.size() - 1;
    for (int k = sheets; k > 0; k--) {
      BitSet here = (BitSet) states.get(at).clone();
      here.andNot(states.get(from[k][at]));
      int number = k;
      here.stream().forEach(i -> sheet[i] = number);
      at = from[k][at];
    }
    return sheet;
  }
}
