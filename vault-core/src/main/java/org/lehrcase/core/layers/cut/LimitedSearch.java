package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;

/**
 * The greatest value from one stock sheet when pieces are limited: blocks are built by joining two
 * at a time, the most promising first, until none promises more than the best that stands
 * (Viswanathan and Bagchi 1993, from memory).
 */
final class LimitedSearch {
  private final int width;
  private final int height;
  private final int[] limits;
  private final ValueBound bound;
  private final int mostBlocks;
  private final PriorityQueue<Built> open =
      new PriorityQueue<>(Comparator.comparingDouble((Built b) -> -b.promise));
  private final List<Built> closed = new ArrayList<>();
  private final Map<Key, List<Built>> seen = new HashMap<>();
  private Optional<Block> best = Optional.empty();
  private double bestValue;
  private int made;

  /** A block that was built, with what it promises at most. */
  private record Built(Block block, double value, short[] used, double promise) {}

  private static final class Key {
    private final short[] used;

    Key(short[] used) {
      this.used = used;
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Key key && Arrays.equals(used, key.used);
    }

    @Override
    public int hashCode() {
      return Arrays.hashCode(used);
    }
  }

  /**
   * What was found.
   *
   * @param block the pieces; empty if none fits
   * @param value theirs
   * @param atMost what no other block can exceed; equal to the value when proven
   */
  record Found(Optional<Block> block, double value, double atMost) {}

  LimitedSearch(int width, int height, int[] limits, ValueBound bound, int mostBlocks) {
    this.width = width;
    this.height = height;
    this.limits = limits.clone();
    this.bound = bound;
    this.mostBlocks = mostBlocks;
  }

  /** Searches; a start that is known already saves work. */
  Found search(List<Fit> fits, Optional<Block> start, double startValue) {
    best = start;
    bestValue = startValue;
    for (Fit fit : fits) {
      short[] used = new short[limits.length];
      used[fit.piece()] = 1;
      offer(new Block.Single(fit), fit.value(), used);
    }
    while (!open.isEmpty() && open.element().promise > bestValue + grain()) {
      if (made > mostBlocks) {
        return new Found(best, bestValue, open.element().promise);
      }
      Built next = open.remove();
      closed.add(next);
      for (int i = 0; i < closed.size(); i++) {
        join(closed.get(i), next);
      }
    }
    return new Found(best, bestValue, bestValue);
  }

  private double grain() {
    return 1e-9 * bestValue;
  }

  private void join(Built one, Built two) {
    int across = one.block.width() + two.block.width();
    int down = one.block.height() + two.block.height();
    boolean beside = across <= width;
    boolean stacked = down <= height;
    if (!beside && !stacked) {
      return;
    }
    short[] used = new short[limits.length];
    for (int i = 0; i < used.length; i++) {
      used[i] = (short) (one.used[i] + two.used[i]);
      if (used[i] > limits[i]) {
        return;
      }
    }
    double value = one.value + two.value;
    if (beside) {
      int tall = Math.max(one.block.height(), two.block.height());
      consider(one, two, true, new int[] {across, tall}, used, value);
    }
    if (stacked) {
      int wide = Math.max(one.block.width(), two.block.width());
      consider(one, two, false, new int[] {wide, down}, used, value);
    }
  }

  private void consider(
      Built one, Built two, boolean upright, int[] size, short[] used, double value) {
    if (promise(size[0], size[1], used, value) > bestValue + grain()) {
      offer(new Block.Joined(upright, one.block, two.block, size[0], size[1]), value, used);
    }
  }

  private double promise(int wide, int tall, short[] used, double value) {
    double around = bound.around(wide, tall);
    double room = (double) width * height - (double) wide * tall;
    return value + Math.min(around, bound.left(used, room));
  }

  private void offer(Block block, double value, short[] used) {
    if (value > bestValue) {
      bestValue = value;
      best = Optional.of(block);
    }
    List<Built> same = seen.computeIfAbsent(new Key(used), k -> new ArrayList<>(1));
    for (Built other : same) {
      if (other.block.width() <= block.width() && other.block.height() <= block.height()) {
        return;
      }
    }
    var built = new Built(block, value, used, promise(block.width(), block.height(), used, value));
    same.add(built);
    open.add(built);
    made++;
  }
}
