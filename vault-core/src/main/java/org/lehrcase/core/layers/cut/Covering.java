package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The cheapest stock sheets whose ways together give everything; exact. */
final class Covering {
  private final CountSets sets;
  private final List<StockSize> stock;
  private final int kerf;

  Covering(CountSets sets, List<StockSize> stock, int kerf) {
    this.sets = sets;
    this.stock = stock;
    this.kerf = kerf;
  }

  /** Sheets so far, the last one first; the beginning has none. */
  private record Chain(Optional<Chain> before, Optional<StockPlanner.Cut> cut) {}

  /** For every count the cheapest price so far, and how. */
  private record Layer(double[] price, Chain[] chain) {
    static Layer empty(int codes) {
      double[] price = new double[codes];
      Arrays.fill(price, 1, codes, Double.POSITIVE_INFINITY);
      Chain[] chain = new Chain[codes];
      Arrays.fill(chain, new Chain(Optional.empty(), Optional.empty()));
      return new Layer(price, chain);
    }

    Layer copy() {
      return new Layer(price.clone(), chain.clone());
    }
  }

  /**
   * Returns the sheets.
   *
   * @throws IllegalArgumentException if there is not enough stock
   */
  List<StockPlanner.Cut> cheapest() {
    int all = sets.codes().size();
    Layer layer = Layer.empty(all);
    for (int s = 0; s < stock.size(); s++) {
      int count = stock.get(s).count();
      if (count == StockSize.ANY) {
        relax(s, layer, layer);
      }
      for (int n = 0; n < Math.min(count, sets.codes().pieces()); n++) {
        relax(s, layer.copy(), layer);
      }
    }
    if (Double.isInfinite(layer.price()[all - 1])) {
      throw new IllegalArgumentException("stock_mm: there is not enough of it for all pieces");
    }
    return trace(layer.chain()[all - 1]);
  }

  /** One sheet more of a kind; codes only grow, so an unlimited kind reads what it just wrote. */
  private void relax(int s, Layer from, Layer to) {
    StockSize size = stock.get(s);
    List<CountSets.Way> ways = sets.ways(size.widthUm() + kerf, size.heightUm() + kerf);
    for (int code = 0; code < from.price().length; code++) {
      double price = from.price()[code] + size.price();
      for (int w = 0; w < ways.size() && Double.isFinite(price); w++) {
        int sum = sets.codes().sum(code, ways.get(w).code());
        if (price < to.price()[sum] - 1e-9 * price) {
          to.price()[sum] = price;
          var cut = new StockPlanner.Cut(s, ways.get(w).block());
          to.chain()[sum] = new Chain(Optional.of(from.chain()[code]), Optional.of(cut));
        }
      }
    }
  }

  private static List<StockPlanner.Cut> trace(Chain last) {
    List<StockPlanner.Cut> cuts = new ArrayList<>();
    Optional<Chain> at = Optional.of(last);
    while (at.isPresent()) {
      at.get().cut().ifPresent(cuts::add);
      at = at.get().before();
    }
    return cuts;
  }
}
