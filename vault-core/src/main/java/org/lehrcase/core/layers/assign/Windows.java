package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * On which sheets each subject may lie at all: not before the longest chain of subjects that hide
 * it, not behind the longest chain that it hides, and in ordered mode neither in front of anything
 * nearer nor behind anything farther. Found by longest paths; the first sheets are a plan in
 * themselves, so a scene can be planned if and only if no first sheet lies behind its last.
 */
final class Windows {
  private final Scene scene;
  private final OcclusionGraph graph;
  private final Mode mode;
  private final int[] first;
  private final int[] last;
  private final int[] cameFrom;
  private final int[] goesTo;

  /**
   * Where the chain to a first sheet begins; of equally long chains the one named first is told.
   */
  private final int[] head;

  /** Takes a scene without a ring, whose depths agree with what hides what if it is ordered. */
  Windows(Scene scene, OcclusionGraph graph, Mode mode, int sheets) {
    this.scene = scene;
    this.graph = graph;
    this.mode = mode;
    this.first = new int[scene.size()];
    this.last = new int[scene.size()];
    this.cameFrom = filled(scene.size());
    this.goesTo = filled(scene.size());
    this.head = IntStream.range(0, scene.size()).toArray();
    List<Integer> order = sweepOrder();
    sweepForward(order);
    Collections.reverse(order);
    sweepBack(order, sheets);
  }

  private static int[] filled(int size) {
    int[] none = new int[size];
    Arrays.fill(none, -1);
    return none;
  }

  private List<Integer> sweepOrder() {
    List<Integer> order = new ArrayList<>(graph.order());
    if (mode == Mode.ORDERED) {
      order.sort(Comparator.comparingDouble(i -> scene.subjects().get(i).depth()));
    }
    return order;
  }

  private double depth(int subject) {
    return scene.subjects().get(subject).depth();
  }

  private void sweepForward(List<Integer> order) {
    int holder = -1;
    int waiting = -1; // the farthest-behind first sheet among subjects of the same depth
    for (int at : order) {
      if (mode == Mode.ORDERED && waiting >= 0 && depth(at) > depth(waiting)) {
        holder = holder < 0 || first[waiting] > first[holder] ? waiting : holder;
        waiting = -1;
      }
      reachForward(at, holder);
      waiting = waiting < 0 || first[at] > first[waiting] ? at : waiting;
    }
  }

  private void reachForward(int at, int nearer) {
    first[at] = 1;
    for (int front : graph.before(at)) {
      boolean same = first[front] + 1 == first[at];
      if (first[front] + 1 > first[at] || same && head[front] < head[at]) {
        first[at] = first[front] + 1;
        cameFrom[at] = front;
        head[at] = head[front];
      }
    }
    if (nearer >= 0 && first[nearer] > first[at]) {
      first[at] = first[nearer];
      cameFrom[at] = nearer;
      head[at] = head[nearer];
    }
    if (scene.pin(at) > first[at]) {
      first[at] = scene.pin(at);
      cameFrom[at] = -1;
      head[at] = at;
    }
  }

  private void sweepBack(List<Integer> order, int sheets) {
    int holder = -1;
    int waiting = -1;
    for (int at : order) {
      if (mode == Mode.ORDERED && waiting >= 0 && depth(at) < depth(waiting)) {
        holder = holder < 0 || last[waiting] < last[holder] ? waiting : holder;
        waiting = -1;
      }
      last[at] = sheets;
      reachBack(at, holder);
      waiting = waiting < 0 || last[at] < last[waiting] ? at : waiting;
    }
  }

  private void reachBack(int at, int farther) {
    for (int back : graph.behind(at)) {
      if (last[back] - 1 < last[at]) {
        last[at] = last[back] - 1;
        goesTo[at] = back;
      }
    }
    if (farther >= 0 && last[farther] < last[at]) {
      last[at] = last[farther];
      goesTo[at] = farther;
    }
    if (scene.pin(at) > 0 && scene.pin(at) < last[at]) {
      last[at] = scene.pin(at);
      goesTo[at] = -1;
    }
  }

  /** Returns the first sheet on which a subject may lie. */
  int first(int subject) {
    return first[subject];
  }

  /** Returns the last sheet on which a subject may lie. */
  int last(int subject) {
    return last[subject];
  }

  /** Returns how many sheets are needed, whatever the pins behind say. */
  int needed() {
    return IntStream.of(first).max().orElse(0);
  }

  /** Returns the subjects whose window is empty. */
  List<Integer> crushed() {
    return IntStream.range(0, first.length).filter(i -> first[i] > last[i]).boxed().toList();
  }

  /** Returns the chain that pushes a subject to its first sheet, the subject itself last. */
  List<Integer> chainBefore(int subject) {
    List<Integer> chain = new ArrayList<>();
    for (int at = subject; at >= 0; at = cameFrom[at]) {
      chain.add(at);
    }
    Collections.reverse(chain);
    return chain;
  }

  /** Returns the chain that holds a subject on its last sheet, the subject itself first. */
  List<Integer> chainBehind(int subject) {
    List<Integer> chain = new ArrayList<>();
    for (int at = subject; at >= 0; at = goesTo[at]) {
      chain.add(at);
    }
    return chain;
  }

  /** Returns the longest chain. */
  List<Integer> longest() {
    int end = 0;
    for (int i = 1; i < first.length; i++) {
      end = first[i] > first[end] ? i : end;
    }
    return chainBefore(end);
  }
}
