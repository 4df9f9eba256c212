package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** Quick cut lists: pieces in several orders by several rules, the best of all tries. */
final class GoodFill {
  private static final int SHUFFLES = 60;

  private final List<List<Fit>> positions;
  private final int width;
  private final int height;

  /** Takes for each piece its positions on this stock, and the size of the stock. */
  GoodFill(List<List<Fit>> positions, int width, int height) {
    this.positions = positions;
    this.width = width;
    this.height = height;
  }

  /** Returns some orders of single pieces: large ones first in several meanings, then mixed. */
  List<List<Integer>> orders(int[] counts) {
    List<Integer> single = new ArrayList<>();
    for (int i = 0; i < counts.length; i++) {
      single.addAll(Collections.nCopies(positions.get(i).isEmpty() ? 0 : counts[i], i));
    }
    List<Comparator<Fit>> meanings =
        List.of(
            Comparator.comparingDouble(f -> -(double) f.width() * f.height()),
            Comparator.comparingInt(f -> -f.height()),
            Comparator.comparingInt(f -> -f.width()),
            Comparator.comparingInt(f -> -Math.max(f.width(), f.height())),
            Comparator.comparingDouble(f -> -f.value() / f.width() / f.height()));
    List<List<Integer>> orders = new ArrayList<>();
    for (Comparator<Fit> meaning : meanings) {
      List<Integer> order = new ArrayList<>(single);
      order.sort((a, b) -> meaning.compare(positions.get(a).get(0), positions.get(b).get(0)));
      orders.add(order);
    }
    var random = new SplittableRandom(1);
    for (int i = 0; i < SHUFFLES; i++) {
      List<Integer> order = new ArrayList<>(orders.get(i % meanings.size()));
      mix(order, random);
      orders.add(order);
    }
    return orders;
  }

  /** Exchanges a few, so that a good order stays nearly as good. */
  private static void mix(List<Integer> order, SplittableRandom random) {
    for (int swaps = 0; swaps < 1 + order.size() / 8; swaps++) {
      if (order.size() > 1) {
        Collections.swap(order, random.nextInt(order.size()), random.nextInt(order.size()));
      }
    }
  }

  /** Fills one sheet from an order; what was placed is taken out of it. */
  Optional<Block> fill(List<Integer> order, FreeRects.Rule rule) {
    var sheet = new FreeRects(width, height, rule);
    order.removeIf(piece -> sheet.place(positions.get(piece)));
    return sheet.block();
  }

  /** Returns the most valuable sheet of all tries. */
  Optional<Block> mostValuable(int[] counts, List<CutPiece> pieces) {
    Optional<Block> best = Optional.empty();
    double most = 0;
    for (List<Integer> order : orders(counts)) {
      for (FreeRects.Rule rule : FreeRects.Rule.values()) {
        Optional<Block> block = fill(new ArrayList<>(order), rule);
        double value = block.map(b -> value(b, pieces)).orElse(0.0);
        if (value > most) {
          most = value;
          best = block;
        }
      }
    }
    return best;
  }

  /** Returns the value of all pieces of a block. */
  static double value(Block block, List<CutPiece> pieces) {
    int[] counts = UnlimitedTable.counts(block, pieces.size());
    double value = 0;
    for (int i = 0; i < counts.length; i++) {
      value += counts[i] * pieces.get(i).value();
    }
    return value;
  }
}
