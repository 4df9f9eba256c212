package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * A row of subjects in order of depth in which some are equally deep, so that their order is open.
 * A sheet boundary then may run through a group of equals in any way that what hides what allows;
 * every such way is a state here, a set of subjects that lie in front of the boundary.
 */
final class TiedRow {
  /** With more ways than this the plan is no longer proven best. */
  private static final int MOST_STATES = 500;

  private final Scene scene;
  private final OcclusionGraph graph;
  private final List<Integer> order;
  private final List<BitSet> states = new ArrayList<>();

  private TiedRow(Scene scene, OcclusionGraph graph, List<Integer> order) {
    this.scene = scene;
    this.graph = graph;
    this.order = order;
  }

  /** Returns all states, from none to all; nothing if there are too many. */
  static Optional<List<BitSet>> states(Scene scene, OcclusionGraph graph, List<Integer> order) {
    var row = new TiedRow(scene, graph, order);
    row.states.add(new BitSet());
    int start = 0;
    while (start < order.size()) {
      int end = row.groupEnd(start);
      if (!row.addGroup(order.subList(start, end))) {
        return Optional.empty();
      }
      start = end;
    }
    return Optional.of(row.states);
  }

  private double depth(int place) {
    return scene.subjects().get(order.get(place)).depth();
  }

  private int groupEnd(int start) {
    int end = start + 1;
    while (end < order.size() && depth(end) == depth(start)) {
      end++;
    }
    return end;
  }

  /** Adds the sets that grow from the last state by one member at a time, smaller ones first. */
  private boolean addGroup(List<Integer> members) {
    int at = states.size() - 1;
    BitSet start = states.get(at);
    List<BitSet> level = List.of(start);
    for (int size = 1; size <= members.size(); size++) {
      List<BitSet> next = new ArrayList<>();
      for (BitSet state : level) {
        grow(state, members, next);
        if (states.size() + next.size() > MOST_STATES) {
          return false;
        }
      }
      states.addAll(next);
      level = next;
    }
    return true;
  }

  private void grow(BitSet state, List<Integer> members, List<BitSet> next) {
    for (int member : members) {
      boolean ready = graph.before(member).stream().allMatch(state::get);
      if (!state.get(member) && ready) {
        BitSet grown = (BitSet) state.clone();
        grown.set(member);
        if (!next.contains(grown)) {
          next.add(grown);
        }
      }
    }
  }

  /** Says whether the order of equals matters to nobody: no two of them are in anybody's way. */
  static boolean isIdle(Scene scene, OcclusionGraph graph, List<Integer> order) {
    for (int i = 0; i + 1 < order.size(); i++) {
      int one = order.get(i);
      int two = order.get(i + 1);
      boolean tied = scene.subjects().get(one).depth() == scene.subjects().get(two).depth();
      boolean settled = graph.conflicts(one).get(two) || loose(scene, graph, one, two);
      if (tied && !settled) {
        return false;
      }
    }
    return true;
  }

  private static boolean loose(Scene scene, OcclusionGraph graph, int one, int two) {
    return graph.conflicts(one).isEmpty()
        && graph.conflicts(two).isEmpty()
        && scene.pin(one) == 0
        && scene.pin(two) == 0;
  }
}
