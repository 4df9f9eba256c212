package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a rectangle, and what is left of the stock sheet around a block, can be worth at most when
 * every piece is limited: unlimited cutting, held down everywhere by what the area can hold of the
 * pieces there are (Viswanathan and Bagchi 1993, from memory; the hold is our own and only ever
 * lowers the bound).
 */
final class ValueBound {
  private static final double MOST_STEPS = 4e9;

  private final List<Fit> byDensity;

  /** One position of each piece, densest first. */
  private final List<Fit> once;

  private final int[] limits;
  private final boolean turn;
  private final Positions across;
  private final Positions down;
  private final double[][] inside;
  private final double[][] around;

  private ValueBound(List<Fit> fits, int[] limits, boolean turn, Positions across, Positions down) {
    this.byDensity =
        fits.stream().sorted(Comparator.comparingDouble((Fit f) -> -f.value() / area(f))).toList();
    var seen = new BitSet();
    List<Fit> distinct = new ArrayList<>();
    for (Fit fit : byDensity) {
      if (!seen.get(fit.piece())) {
        seen.set(fit.piece());
        distinct.add(fit);
      }
    }
    this.once = List.copyOf(distinct);
    this.limits = limits.clone();
    this.turn = turn;
    this.across = across;
    this.down = down;
    this.inside = new double[across.count()][down.count()];
    this.around = new double[across.count()][down.count()];
  }

  /** Fills the tables; nothing if that would take too long. */
  static Optional<ValueBound> of(
      List<Fit> fits, int[] limits, boolean turn, int width, int height) {
    Positions across = Positions.sums(fits.stream().map(Fit::width).toList(), width);
    Positions down = Positions.sums(fits.stream().map(Fit::height).toList(), height);
    double steps = (double) across.count() * down.count() * (across.count() + down.count());
    if (steps > MOST_STEPS) {
      return Optional.empty();
    }
    var bound = new ValueBound(fits, limits, turn, across, down);
    bound.fillInside();
    bound.fillAround(width, height);
    return Optional.of(bound);
  }

  private static double area(Fit fit) {
    return (double) fit.width() * fit.height();
  }

  private void fillInside() {
    int[][] acrossRest = across.differences();
    int[][] downRest = down.differences();
    for (int i = 1; i < across.count(); i++) {
      for (int j = 1; j < down.count(); j++) {
        double best = Math.max(inside[i - 1][j], inside[i][j - 1]);
        for (Fit fit : byDensity) {
          boolean fits = fit.width() <= across.at(i) && fit.height() <= down.at(j);
          best = fits ? Math.max(best, fit.value()) : best;
        }
        for (int a = 1; 2L * across.at(a) <= across.at(i); a++) {
          best = Math.max(best, inside[a][j] + inside[acrossRest[i][a]][j]);
        }
        for (int a = 1; 2L * down.at(a) <= down.at(j); a++) {
          best = Math.max(best, inside[i][a] + inside[i][downRest[j][a]]);
        }
        inside[i][j] = Math.min(best, held(i, j));
      }
    }
  }

  /** The most that an area can hold, parts of pieces included, of what fits and there is. */
  private double held(int i, int j) {
    double room = (double) across.at(i) * down.at(j);
    int[] left = limits.clone();
    double sum = 0;
    for (Fit fit : byDensity) {
      int each = (across.at(i) / fit.width()) * (down.at(j) / fit.height());
      int most = turn ? (each == 0 ? 0 : left[fit.piece()]) : Math.min(left[fit.piece()], each);
      double taken = Math.min(most, room / area(fit));
      left[fit.piece()] -= turn ? (int) Math.ceil(taken) : 0;
      sum += taken * fit.value();
      room -= taken * area(fit);
      if (room <= 0) {
        break;
      }
    }
    return sum;
  }

  private void fillAround(int width, int height) {
    for (int i = across.count() - 1; i >= 0; i--) {
      for (int j = down.count() - 1; j >= 0; j--) {
        double best = 0;
        for (int a = 1; a < across.count() && across.at(i) + across.at(a) <= width; a++) {
          int to = across.floor(across.at(i) + across.at(a));
          best = Math.max(best, around[to][j] + inside[a][j]);
        }
        for (int b = 1; b < down.count() && down.at(j) + down.at(b) <= height; b++) {
          int to = down.floor(down.at(j) + down.at(b));
          best = Math.max(best, around[i][to] + inside[i][b]);
        }
        around[i][j] = best;
      }
    }
  }

  /** Returns what a whole rectangle is worth at most. */
  double inside(int width, int height) {
    return inside[across.floor(width)][down.floor(height)];
  }

  /** Returns what can still come out of the stock sheet round a block, at most. */
  double around(int width, int height) {
    return around[across.floor(width)][down.floor(height)];
  }

  /**
   * Returns what the pieces that are left can add, at most, in an area.
   *
   * @param used how many of each are in the block already
   */
  double left(short[] used, double room) {
    double sum = 0;
    double free = room;
    for (Fit fit : once) {
      double taken = Math.min(limits[fit.piece()] - used[fit.piece()], free / area(fit));
      sum += taken * fit.value();
      free -= taken * area(fit);
      if (free <= 0) {
        break;
      }
    }
    return sum;
  }
}
