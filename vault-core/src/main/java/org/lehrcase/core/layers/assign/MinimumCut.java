package org.lehrcase.core.layers.assign;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;

/**
 * Chooses things of greatest total gain, where choosing one may oblige to choose another: a minimum
 * cut, found by pushing flow along shortest ways (Edmonds and Karp 1972 with the levels of Dinic
 * 1970; both from memory).
 */
final class MinimumCut {
  private final int source;
  private final int sink;
  private final List<List<Integer>> leaving = new ArrayList<>();
  private final List<Integer> heads = new ArrayList<>();
  private double[] room = new double[64];
  private int[] level = new int[0];

  MinimumCut(int things) {
    source = things;
    sink = things + 1;
    for (int i = 0; i < things + 2; i++) {
      leaving.add(new ArrayList<>());
    }
  }

  /** Says what a thing is worth; below 0 what it costs. */
  void offer(int thing, double gain) {
    if (gain > 0) {
      connect(source, thing, gain);
    } else if (gain < 0) {
      connect(thing, sink, -gain);
    }
  }

  /** Says that whoever chooses one must choose the other. */
  void require(int one, int other) {
    connect(one, other, Double.POSITIVE_INFINITY);
  }

  private void connect(int from, int to, double capacity) {
    if (heads.size() + 2 > room.length) {
      room = Arrays.copyOf(room, 2 * room.length);
    }
    leaving.get(from).add(heads.size());
    room[heads.size()] = capacity;
    heads.add(to);
    leaving.get(to).add(heads.size());
    heads.add(from);
  }

  /**
   * Returns the best choice; nothing if no choice gains.
   *
   * @param grain what is smaller than this is rounding
   */
  BitSet chosen(double grain) {
    while (reaches(grain)) {
      int[] next = new int[leaving.size()];
      while (push(source, Double.POSITIVE_INFINITY, next, grain) > grain) {
        // every push fills one way
      }
    }
    var side = new BitSet();
    for (int i = 0; i < source; i++) {
      side.set(i, level[i] >= 0);
    }
    return side;
  }

  private boolean reaches(double grain) {
    level = new int[leaving.size()];
    Arrays.fill(level, -1);
    level[source] = 0;
    Deque<Integer> open = new ArrayDeque<>(List.of(source));
    while (!open.isEmpty()) {
      int at = open.remove();
      for (int edge : leaving.get(at)) {
        int to = heads.get(edge);
        if (room[edge] > grain && level[to] < 0) {
          level[to] = level[at] + 1;
          open.add(to);
        }
      }
    }
    return level[sink] >= 0;
  }

  private double push(int at, double most, int[] next, double grain) {
    if (at == sink) {
      return most;
    }
    for (; next[at] < leaving.get(at).size(); next[at]++) {
      int edge = leaving.get(at).get(next[at]);
      int to = heads.get(edge);
      if (room[edge] > grain && level[to] == level[at] + 1) {
        double pushed = push(to, Math.min(most, room[edge]), next, grain);
        if (pushed > grain) {
          room[edge] -= pushed;
          room[edge ^ 1] += pushed;
          return pushed;
        }
      }
    }
    return 0;
  }
}
