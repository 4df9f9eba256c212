package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The cheapest stock sheets from which every piece of a list can be cut. */
public final class StockPlanner {
  private final List<CutPiece> pieces;
  private final List<StockSize> stock;
  private final CutWay way;
  private final int[] demand;
  private final int width;
  private final int height;

  /**
   * Takes what must be cut from what.
   *
   * @throws IllegalArgumentException if there is nothing to cut, if a count is not given, or if a
   *     piece fits no stock sheet
   */
  public StockPlanner(List<CutPiece> pieces, List<StockSize> stock, CutWay way) {
    if (pieces.isEmpty() || stock.isEmpty()) {
      throw new IllegalArgumentException("pieces and stock_mm must name at least one");
    }
    this.pieces = List.copyOf(pieces);
    this.stock = List.copyOf(stock);
    this.way = way;
    this.demand = pieces.stream().mapToInt(CutPiece::count).toArray();
    this.width = stock.stream().mapToInt(StockSize::widthUm).max().orElse(0) + way.kerfUm();
    this.height = stock.stream().mapToInt(StockSize::heightUm).max().orElse(0) + way.kerfUm();
    for (int i = 0; i < demand.length; i++) {
      int piece = i;
      if (demand[i] < 0) {
        throw new IllegalArgumentException("count must be a number for a list that must be cut");
      }
      if (stock.stream().noneMatch(s -> fits(s).stream().anyMatch(f -> f.piece() == piece))) {
        throw new IllegalArgumentException(
            "pieces: " + pieces.get(i).name() + " is larger than every stock sheet");
      }
    }
  }

  private List<Fit> fits(StockSize size) {
    int wide = size.widthUm() + way.kerfUm();
    return Fit.all(pieces, way, wide, size.heightUm() + way.kerfUm());
  }

  /** One stock sheet and what is cut from it. */
  record Cut(int stock, Block block) {}

  /**
   * Returns the cheapest list and whether it is proven.
   *
   * @throws IllegalArgumentException if there is not enough stock
   */
  public CutPlan plan() {
    List<Fit> all = Fit.all(pieces, way, width, height);
    Optional<CountSets> sets = CountSets.of(all, demand, width, height);
    if (sets.isPresent()) {
      List<Cut> cuts = new Covering(sets.get(), stock, way.kerfUm()).cheapest();
      return result(cuts, price(cuts));
    }
    return result(quick(), lowerBound());
  }

  private double price(List<Cut> cuts) {
    return cuts.stream().mapToDouble(c -> stock.get(c.stock()).price()).sum();
  }

  private List<Cut> quick() {
    List<Cut> best = List.of();
    double least = Double.POSITIVE_INFINITY;
    double enough = lowerBound();
    for (List<Integer> order : orders()) {
      for (FreeRects.Rule rule : FreeRects.Rule.values()) {
        List<Cut> cuts = filled(order, rule);
        double price = cuts.isEmpty() ? Double.POSITIVE_INFINITY : price(cuts);
        if (price < least) {
          least = price;
          best = cuts;
        }
        if (least <= enough * (1 + 1e-9)) {
          return best;
        }
      }
    }
    if (best.isEmpty()) {
      throw new IllegalArgumentException("stock_mm: there is not enough of it for all pieces");
    }
    return best;
  }

  private GoodFill fill(StockSize size) {
    var positions = ValuePlanner.positions(fits(size), pieces.size());
    return new GoodFill(positions, size.widthUm() + way.kerfUm(), size.heightUm() + way.kerfUm());
  }

  private List<List<Integer>> orders() {
    var positions = ValuePlanner.positions(Fit.all(pieces, way, width, height), pieces.size());
    return new GoodFill(positions, width, height).orders(demand);
  }

  /** Takes sheet after sheet, each time the kind that gives most area of pieces for its price. */
  private List<Cut> filled(List<Integer> order, FreeRects.Rule rule) {
    List<Integer> open = new ArrayList<>(order);
    int[] used = new int[stock.size()];
    List<Cut> cuts = new ArrayList<>();
    while (!open.isEmpty()) {
      Optional<Cut> next = Optional.empty();
      double most = 0;
      for (int s = 0; s < stock.size(); s++) {
        boolean there = stock.get(s).count() == StockSize.ANY || used[s] < stock.get(s).count();
        Optional<Block> block =
            there ? fill(stock.get(s)).fill(new ArrayList<>(open), rule) : Optional.empty();
        double gain = block.map(this::area).orElse(0.0) / stock.get(s).price();
        if (gain > most) {
          most = gain;
          next = Optional.of(new Cut(s, block.orElseThrow()));
        }
      }
      if (next.isEmpty()) {
        return List.of();
      }
      used[next.get().stock()]++;
      cuts.add(next.get());
      remove(open, next.get().block());
    }
    return cuts;
  }

  private double area(Block block) {
    int[] counts = UnlimitedTable.counts(block, pieces.size());
    return IntStream.range(0, counts.length)
        .mapToDouble(i -> counts[i] * area(pieces.get(i)))
        .sum();
  }

  private double area(CutPiece piece) {
    double wide = (double) piece.widthUm() + way.kerfUm();
    return wide * (piece.heightUm() + way.kerfUm());
  }

  private void remove(List<Integer> open, Block block) {
    int[] counts = UnlimitedTable.counts(block, pieces.size());
    for (int i = 0; i < counts.length; i++) {
      for (int n = 0; n < counts[i]; n++) {
        open.remove(Integer.valueOf(i));
      }
    }
  }

  /**
   * No list can be cheaper: all pieces need their area at the best price of an area; and pieces
   * larger than half a sheet both ways need a sheet each.
   */
  double lowerBound() {
    double area = 0;
    int large = 0;
    for (int i = 0; i < demand.length; i++) {
      area += demand[i] * area(pieces.get(i));
      large += isLarge(i) ? demand[i] : 0;
    }
    double perArea =
        stock.stream().mapToDouble(s -> s.price() / room(s)).min().orElse(Double.MAX_VALUE);
    double cheapest = stock.stream().mapToDouble(StockSize::price).min().orElse(0);
    double bound = Math.max(area * perArea, large * cheapest);
    boolean onePrice = stock.stream().allMatch(s -> s.price() == cheapest);
    return onePrice ? cheapest * Math.ceil(bound / cheapest - 1e-9) : bound;
  }

  private double room(StockSize size) {
    double wide = (double) size.widthUm() + way.kerfUm();
    return wide * (size.heightUm() + way.kerfUm());
  }

  /** Two such pieces never share a sheet: beside and above each other they are too long. */
  private boolean isLarge(int piece) {
    for (StockSize size : stock) {
      for (Fit fit : fits(size)) {
        boolean wide = 2L * fit.width() > size.widthUm() + way.kerfUm();
        boolean tall = 2L * fit.height() > size.heightUm() + way.kerfUm();
        if (fit.piece() == piece && !(wide && tall)) {
          return false;
        }
      }
    }
    return true;
  }

  private CutPlan result(List<Cut> cuts, double bound) {
    int[] wanted = demand.clone();
    List<CutSheet> sheets = new ArrayList<>();
    List<Cut> order = new ArrayList<>(cuts);
    order.sort(Comparator.comparingDouble(c -> -area(c.block())));
    for (Cut cut : order) {
      StockSize size = stock.get(cut.stock());
      sheets.add(ScoreOrder.of(cut.stock(), size, cut.block(), way.kerfUm(), wanted));
    }
    double value =
        IntStream.range(0, demand.length)
            .mapToDouble(i -> (demand[i] - wanted[i]) * pieces.get(i).value())
            .sum();
    double price = price(cuts);
    boolean proven = price <= bound * (1 + 1e-9);
    List<Integer> left = IntStream.of(wanted).boxed().toList();
    return new CutPlan(sheets, value, price, bound, proven, Collections.unmodifiableList(left));
  }
}
