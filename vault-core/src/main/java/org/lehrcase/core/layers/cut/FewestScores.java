package org.lehrcase.core.layers.cut;

import java.util.List;
import java.util.Optional;

/**
 * Of all ways to cut the greatest value from a rectangle the one with the fewest scores. A part is
 * either exactly as wide as a position or wider by something that one score must take off, and
 * likewise as high: four cases for each rectangle of the table.
 */
final class FewestScores {
  /** Beyond this nobody waits for it. */
  static final double MOST_STEPS = 1e8;

  private static final double SAME = 1e-12;
  private static final int CASES = 4;
  private static final int EXACT_WIDTH = 2;
  private static final int EXACT_HEIGHT = 1;
  private static final int NONE = Integer.MAX_VALUE / 4;

  private final UnlimitedTable table;
  private final List<Fit> fits;
  private final int[][] acrossRest;
  private final int[][] downRest;
  private final int[][][] scores;

  /** A fit + 1, or beyond the fits an upright cut + 1, or below 0 a level one. */
  private final int[][][] choice;

  FewestScores(UnlimitedTable table) {
    this.table = table;
    this.fits = table.fits();
    this.acrossRest = table.across().differences();
    this.downRest = table.down().differences();
    int wide = table.across().count();
    int tall = table.down().count();
    scores = new int[CASES][wide][tall];
    choice = new int[CASES][wide][tall];
    for (int i = 1; i < wide; i++) {
      for (int j = 1; j < tall; j++) {
        for (int exact = CASES - 1; exact >= 0 && table.valueAt(i, j) > 0; exact--) {
          scores[exact][i][j] = NONE;
          single(exact, i, j);
          upright(exact, i, j);
          level(exact, i, j);
        }
      }
    }
  }

  private boolean isBest(double value, int i, int j) {
    return value >= table.valueAt(i, j) * (1 - SAME);
  }

  private void offer(int exact, int i, int j, int count, int code) {
    if (count < scores[exact][i][j]) {
      scores[exact][i][j] = count;
      choice[exact][i][j] = code;
    }
  }

  private void single(int exact, int i, int j) {
    for (int f = 0; f < fits.size(); f++) {
      Fit fit = fits.get(f);
      int right = table.across().at(i) - fit.width();
      int below = table.down().at(j) - fit.height();
      if (right >= 0 && below >= 0 && isBest(fit.value(), i, j)) {
        int wide = right == 0 && (exact & EXACT_WIDTH) != 0 ? 0 : 1;
        int tall = below == 0 && (exact & EXACT_HEIGHT) != 0 ? 0 : 1;
        offer(exact, i, j, wide + tall, f + 1);
      }
    }
  }

  private void upright(int exact, int i, int j) {
    boolean isExact = (exact & EXACT_WIDTH) != 0;
    for (int a = 1; a <= (isExact ? i - 1 : i); a++) {
      int b = acrossRest[i][a];
      if (isBest(table.valueAt(a, j) + table.valueAt(b, j), i, j)) {
        int two = rightCase(exact, i, a);
        int count = 1 + scores[exact | EXACT_WIDTH][a][j] + scores[two][b][j];
        offer(exact, i, j, count, fits.size() + a);
      }
    }
  }

  private int rightCase(int exact, int i, int a) {
    Positions across = table.across();
    boolean whole = across.at(a) + across.at(acrossRest[i][a]) == across.at(i);
    return whole ? exact : exact & EXACT_HEIGHT;
  }

  private void level(int exact, int i, int j) {
    boolean isExact = (exact & EXACT_HEIGHT) != 0;
    for (int a = 1; a <= (isExact ? j - 1 : j); a++) {
      int b = downRest[j][a];
      if (isBest(table.valueAt(i, a) + table.valueAt(i, b), i, j)) {
        int two = lowerCase(exact, j, a);
        int count = 1 + scores[exact | EXACT_HEIGHT][i][a] + scores[two][i][b];
        offer(exact, i, j, count, -a);
      }
    }
  }

  private int lowerCase(int exact, int j, int a) {
    Positions down = table.down();
    boolean whole = down.at(a) + down.at(downRest[j][a]) == down.at(j);
    return whole ? exact : exact & EXACT_WIDTH;
  }

  /** Returns what to cut from a rectangle; nothing if nothing fits. */
  Optional<Block> block(int width, int height) {
    int i = table.across().floor(width);
    int j = table.down().floor(height);
    int exact = table.across().at(i) == width ? EXACT_WIDTH : 0;
    exact |= table.down().at(j) == height ? EXACT_HEIGHT : 0;
    return block(exact, i, j);
  }

  private Optional<Block> block(int exact, int i, int j) {
    if (table.valueAt(i, j) <= 0) {
      return Optional.empty();
    }
    int code = choice[exact][i][j];
    if (code > 0 && code <= fits.size()) {
      return Optional.of(new Block.Single(fits.get(code - 1)));
    }
    if (code > 0) {
      int a = code - fits.size();
      Optional<Block> one = block(exact | EXACT_WIDTH, a, j);
      Optional<Block> two = block(rightCase(exact, i, a), acrossRest[i][a], j);
      return UnlimitedTable.joined(one, two, true);
    }
    Optional<Block> one = block(exact | EXACT_HEIGHT, i, -code);
    Optional<Block> two = block(lowerCase(exact, j, -code), i, downRest[j][-code]);
    return UnlimitedTable.joined(one, two, false);
  }
}
