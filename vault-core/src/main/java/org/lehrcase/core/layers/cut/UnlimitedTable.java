package org.lehrcase.core.layers.cut;

import java.util.List;
import java.util.Optional;

/**
 * The greatest value that comes out of every rectangle when each piece may be cut any number of
 * times (Gilmore and Gomory 1965; Beasley 1985). Only sums of sizes matter as positions.
 */
final class UnlimitedTable {
  /** More than this would take a minute; a quarter of it is really walked. */
  private static final double MOST_STEPS = 3e10;

  private static final int NOTHING = 0;

  private final List<Fit> fits;
  private final Positions across;
  private final Positions down;
  private final int[][] acrossRest;
  private final int[][] downRest;
  private final double[][] value;

  /** The same, turned, so that both ways of cutting read along a row. */
  private final double[][] turned;

  /** Place of a fit + 1, or beyond the fits an upright cut, or below 0 a level one. */
  private final int[][] choice;

  private UnlimitedTable(List<Fit> fits, Positions across, Positions down) {
    this.fits = fits;
    this.across = across;
    this.down = down;
    acrossRest = across.differences();
    downRest = down.differences();
    value = new double[across.count()][down.count()];
    turned = new double[down.count()][across.count()];
    choice = new int[across.count()][down.count()];
    placeSingles();
    for (int i = 1; i < across.count(); i++) {
      for (int j = 1; j < down.count(); j++) {
        cutUpright(i, j);
        cutLevel(i, j);
        turned[j][i] = value[i][j];
      }
    }
  }

  private static double steps(Positions across, Positions down) {
    return (double) across.count() * down.count() * (across.count() + down.count());
  }

  /** Fills the table for all rectangles up to a size; nothing if that would take too long. */
  static Optional<UnlimitedTable> of(List<Fit> fits, int width, int height) {
    Positions across = Positions.sums(fits.stream().map(Fit::width).toList(), width);
    Positions down = Positions.sums(fits.stream().map(Fit::height).toList(), height);
    return steps(across, down) > MOST_STEPS
        ? Optional.empty()
        : Optional.of(new UnlimitedTable(fits, across, down));
  }

  private void placeSingles() {
    for (int f = 0; f < fits.size(); f++) {
      Fit fit = fits.get(f);
      int i = across.floor(fit.width());
      int j = down.floor(fit.height());
      if (fit.value() > value[i][j]) {
        value[i][j] = fit.value();
        choice[i][j] = f + 1;
      }
    }
  }

  private void cutUpright(int i, int j) {
    int[] rest = acrossRest[i];
    for (int a = 1; a < i && 2L * across.at(a) <= across.at(i); a++) {
      offer(i, j, turned[j][a] + turned[j][rest[a]], fits.size() + a);
    }
    offer(i, j, value[i - 1][j], fits.size() + i - 1);
  }

  private void cutLevel(int i, int j) {
    int[] rest = downRest[j];
    for (int a = 1; a < j && 2L * down.at(a) <= down.at(j); a++) {
      offer(i, j, value[i][a] + value[i][rest[a]], -a);
    }
    offer(i, j, value[i][j - 1], -(j - 1));
  }

  private void offer(int i, int j, double total, int code) {
    if (total > value[i][j]) {
      value[i][j] = total;
      choice[i][j] = code;
    }
  }

  Positions across() {
    return across;
  }

  Positions down() {
    return down;
  }

  /** Returns the greatest value at two indexes. */
  double valueAt(int i, int j) {
    return value[i][j];
  }

  List<Fit> fits() {
    return fits;
  }

  /** Returns the greatest value of a rectangle. */
  double value(int width, int height) {
    return value[across.floor(width)][down.floor(height)];
  }

  /** Returns what to cut from a rectangle, with few scores; nothing if nothing fits. */
  Optional<Block> block(int width, int height) {
    return steps(across, down) <= FewestScores.MOST_STEPS
        ? new FewestScores(this).block(width, height)
        : blockAt(across.floor(width), down.floor(height));
  }

  private Optional<Block> blockAt(int i, int j) {
    int code = choice[i][j];
    if (code == NOTHING) {
      return Optional.empty();
    }
    if (code > 0 && code <= fits.size()) {
      return Optional.of(new Block.Single(fits.get(code - 1)));
    }
    if (code > 0) {
      int a = code - fits.size();
      return joined(blockAt(a, j), blockAt(acrossRest[i][a], j), true);
    }
    return joined(blockAt(i, -code), blockAt(i, downRest[j][-code]), false);
  }

  static Optional<Block> joined(Optional<Block> one, Optional<Block> two, boolean upright) {
    if (one.isEmpty() || two.isEmpty()) {
      return one.isPresent() ? one : two;
    }
    return Optional.of(
        upright ? Block.beside(one.get(), two.get()) : Block.stacked(one.get(), two.get()));
  }

  /** Returns how often each piece is cut from a rectangle. */
  static int[] counts(Block block, int pieces) {
    int[] counts = new int[pieces];
    count(block, counts);
    return counts;
  }

  private static void count(Block block, int[] counts) {
    if (block instanceof Block.Single single) {
      counts[single.fit().piece()]++;
    } else if (block instanceof Block.Joined joined) {
      count(joined.first(), counts);
      count(joined.second(), counts);
    }
  }
}
