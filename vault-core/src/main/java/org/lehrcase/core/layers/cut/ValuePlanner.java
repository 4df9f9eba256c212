package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The most valuable pieces from a single stock sheet. */
public final class ValuePlanner {
  private static final int MOST_BLOCKS = 300_000;

  private final List<CutPiece> pieces;
  private final StockSize stock;
  private final CutWay way;
  private final int width;
  private final int height;
  private final List<Fit> fits;
  private final int[] limits;

  /**
   * Takes what may be cut from what.
   *
   * @throws IllegalArgumentException if there are no pieces
   */
  public ValuePlanner(List<CutPiece> pieces, StockSize stock, CutWay way) {
    if (pieces.isEmpty()) {
      throw new IllegalArgumentException("pieces must name at least one");
    }
    this.pieces = List.copyOf(pieces);
    this.stock = stock;
    this.way = way;
    this.width = stock.widthUm() + way.kerfUm();
    this.height = stock.heightUm() + way.kerfUm();
    this.fits = Fit.all(pieces, way, width, height);
    long area = (long) stock.widthUm() * stock.heightUm();
    this.limits = pieces.stream().mapToInt(p -> p.limit(area)).toArray();
  }

  /** Returns the most valuable cut list, and whether that is proven. */
  public CutPlan plan() {
    Optional<UnlimitedTable> table = UnlimitedTable.of(fits, width, height);
    double most = table.map(t -> t.value(width, height)).orElse(Double.POSITIVE_INFINITY);
    Optional<Block> unlimited = table.flatMap(t -> t.block(width, height));
    if (table.isPresent() && unlimited.map(this::allowed).orElse(true)) {
      return result(unlimited, most);
    }
    Optional<Block> quick =
        new GoodFill(positions(fits, pieces.size()), width, height).mostValuable(limits, pieces);
    double value = quick.map(b -> GoodFill.value(b, pieces)).orElse(0.0);
    Optional<ValueBound> bound = ValueBound.of(fits, limits, way.turn(), width, height);
    if (bound.isEmpty()) {
      return result(quick, Math.min(most, areaBound()));
    }
    var search = new LimitedSearch(width, height, limits, bound.get(), MOST_BLOCKS);
    LimitedSearch.Found found = search.search(fits, quick, value);
    double atMost = Math.min(found.atMost(), Math.min(most, bound.get().inside(width, height)));
    return result(found.block(), Math.max(found.value(), atMost));
  }

  private boolean allowed(Block block) {
    int[] counts = UnlimitedTable.counts(block, limits.length);
    for (int i = 0; i < counts.length; i++) {
      if (counts[i] > limits[i]) {
        return false;
      }
    }
    return true;
  }

  private double areaBound() {
    double area = (double) width * height;
    return fits.stream()
        .mapToDouble(f -> f.value() * area / f.width() / f.height())
        .max()
        .orElse(0);
  }

  /** Returns the positions of each piece, by its place. */
  static List<List<Fit>> positions(List<Fit> fits, int pieces) {
    List<List<Fit>> positions = new ArrayList<>();
    for (int i = 0; i < pieces; i++) {
      positions.add(new ArrayList<>());
    }
    fits.forEach(fit -> positions.get(fit.piece()).add(fit));
    return positions;
  }

  private CutPlan result(Optional<Block> block, double bound) {
    int[] wanted = limits.clone();
    List<CutSheet> sheets =
        block.map(b -> List.of(ScoreOrder.of(0, stock, b, way.kerfUm(), wanted))).orElse(List.of());
    double value = block.map(b -> GoodFill.value(b, pieces)).orElse(0.0);
    List<Integer> left = new ArrayList<>();
    for (int i = 0; i < wanted.length; i++) {
      boolean limited = pieces.get(i).count() != CutPiece.AS_MANY_AS_FIT;
      left.add(limited ? pieces.get(i).count() - (limits[i] - wanted[i]) : 0);
    }
    boolean proven = value >= bound - 1e-9 * Math.abs(bound);
    return new CutPlan(sheets, value, stock.price() * sheets.size(), bound, proven, left);
  }

  /** Returns how many pieces there are at most; for tests. */
  int[] limits() {
    return Arrays.copyOf(limits, limits.length);
  }
}
