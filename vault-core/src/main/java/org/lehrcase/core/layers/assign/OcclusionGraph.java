package org.lehrcase.core.layers.assign;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Deque;
import java.util.List;

/** What hides what, as a graph: who is directly behind and in front of whom. */
final class OcclusionGraph {
  private final List<List<Integer>> behind = new ArrayList<>();
  private final List<List<Integer>> before = new ArrayList<>();
  private final BitSet[] conflicts;

  OcclusionGraph(Scene scene) {
    conflicts = new BitSet[scene.size()];
    for (int i = 0; i < scene.size(); i++) {
      behind.add(new ArrayList<>());
      before.add(new ArrayList<>());
      conflicts[i] = new BitSet();
    }
    for (Occlusion o : scene.occlusions()) {
      behind.get(o.front()).add(o.back());
      before.get(o.back()).add(o.front());
      conflicts[o.front()].set(o.back());
      conflicts[o.back()].set(o.front());
    }
  }

  int size() {
    return behind.size();
  }

  List<Integer> behind(int subject) {
    return behind.get(subject);
  }

  List<Integer> before(int subject) {
    return before.get(subject);
  }

  /** Returns the subjects that may not share a sheet with this one. */
  BitSet conflicts(int subject) {
    return conflicts[subject];
  }

  /** Returns all subjects so that whoever hides comes first; fewer than all if there is a ring. */
  List<Integer> order() {
    int[] waitsFor = new int[size()];
    Deque<Integer> ready = new ArrayDeque<>();
    for (int i = 0; i < size(); i++) {
      waitsFor[i] = before.get(i).size();
      if (waitsFor[i] == 0) {
        ready.add(i);
      }
    }
    List<Integer> order = new ArrayList<>();
    while (!ready.isEmpty()) {
      int next = ready.remove();
      order.add(next);
      for (int after : behind.get(next)) {
        if (--waitsFor[after] == 0) {
          ready.add(after);
        }
      }
    }
    return order;
  }

  /** Returns subjects that hide each other in a ring, each the next and the last the first. */
  List<Integer> ring() {
    List<Integer> ordered = order();
    if (ordered.size() == size()) {
      return List.of();
    }
    BitSet left = new BitSet();
    left.set(0, size());
    ordered.forEach(left::clear);
    // every subject that is left has one in front of it that is left too: walk until one returns
    List<Integer> walk = new ArrayList<>();
    int at = left.nextSetBit(0);
    while (!walk.contains(at)) {
      walk.add(at);
      at = before.get(at).stream().filter(left::get).findFirst().orElseThrow();
    }
    List<Integer> ring = new ArrayList<>(walk.subList(walk.indexOf(at), walk.size()));
    Collections.reverse(ring);
    Collections.rotate(ring, -ring.indexOf(Collections.min(ring)));
    return ring;
  }
}
