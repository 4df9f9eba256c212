package org.lehrcase.core.layers.cut;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything that can come out of every rectangle, as counts of each piece that no other counts
 * exceed in everything: exact for the few sizes of a usual list.
 */
final class CountSets {
  private static final long MOST_CODES = 3000;
  private static final long MOST_JOINS = 150_000_000;

  /**
   * One way to cut.
   *
   * @param code what comes out
   * @param block how
   * @param joints cuts between pieces; of equal ways the one with fewer is kept
   */
  record Way(int code, Block block, int joints) {}

  private final CountCode codes;
  private final Positions across;
  private final Positions down;
  private final List<List<List<Way>>> ways = new ArrayList<>();
  private long joins;

  private CountSets(CountCode codes, Positions across, Positions down) {
    this.codes = codes;
    this.across = across;
    this.down = down;
  }

  /** Finds all ways for rectangles up to a size; nothing if that would take too long. */
  static Optional<CountSets> of(List<Fit> fits, int[] demand, int width, int height) {
    if (CountCode.sizeOf(demand, MOST_CODES) == 0) {
      return Optional.empty();
    }
    Positions across = Positions.sums(fits.stream().map(Fit::width).toList(), width);
    Positions down = Positions.sums(fits.stream().map(Fit::height).toList(), height);
    var sets = new CountSets(new CountCode(demand), across, down);
    return sets.fill(fits) ? Optional.of(sets) : Optional.empty();
  }

  CountCode codes() {
    return codes;
  }

  /** Returns the ways to cut a rectangle. */
  List<Way> ways(int width, int height) {
    return ways.get(across.floor(width)).get(down.floor(height));
  }

  private boolean fill(List<Fit> fits) {
    int[][] acrossRest = across.differences();
    int[][] downRest = down.differences();
    for (int i = 0; i < across.count(); i++) {
      ways.add(new ArrayList<>());
      for (int j = 0; j < down.count(); j++) {
        Map<Integer, Way> found = new HashMap<>();
        singles(fits, i, j, found);
        for (int a = 1; a < i && 2L * across.at(a) <= across.at(i); a++) {
          joinAll(ways.get(a).get(j), ways.get(acrossRest[i][a]).get(j), true, found);
        }
        for (int a = 1; a < j && 2L * down.at(a) <= down.at(j); a++) {
          joinAll(ways.get(i).get(a), ways.get(i).get(downRest[j][a]), false, found);
        }
        ways.get(i).add(best(found));
        if (joins > MOST_JOINS) {
          return false;
        }
      }
    }
    return true;
  }

  private void singles(List<Fit> fits, int i, int j, Map<Integer, Way> found) {
    for (Fit fit : fits) {
      if (fit.width() <= across.at(i) && fit.height() <= down.at(j)) {
        found.putIfAbsent(
            codes.single(fit.piece()),
            new Way(codes.single(fit.piece()), new Block.Single(fit), 0));
      }
    }
  }

  private void joinAll(List<Way> ones, List<Way> twos, boolean upright, Map<Integer, Way> found) {
    for (Way one : ones) {
      for (Way two : twos) {
        joins++;
        int code = codes.sum(one.code(), two.code());
        int joints = one.joints() + two.joints() + 1;
        Way known = found.get(code);
        if (known == null || known.joints() > joints) {
          Block block =
              upright
                  ? Block.beside(one.block(), two.block())
                  : Block.stacked(one.block(), two.block());
          found.put(code, new Way(code, block, joints));
        }
      }
    }
  }

  private List<Way> best(Map<Integer, Way> found) {
    return found.values().stream()
        .filter(
            way ->
                found.keySet().stream()
                    .noneMatch(code -> code != way.code() && codes.covers(code, way.code())))
        .sorted((a, b) -> Integer.compare(a.code(), b.code()))
        .toList();
  }
}
