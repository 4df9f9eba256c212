package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * Another number of sheets from a plan that exists, in the order of that plan: whole sheets are
 * merged, or sheets are divided by depth; whatever is left over stays clear.
 */
public final class OtherCount {
  private final Scene scene;
  private final int[] sheetOf;
  private final int sheets;

  /**
   * Takes a plan.
   *
   * @param scene its subjects; the pins of the scene are not looked at
   * @param sheetOf the sheet of each, from 1
   * @throws IllegalArgumentException if it is no plan of this scene
   */
  public OtherCount(Scene scene, List<Integer> sheetOf) {
    this.scene = scene;
    this.sheetOf = sheetOf.stream().mapToInt(Integer::intValue).toArray();
    this.sheets = Arrays.stream(this.sheetOf).max().orElse(0);
    boolean fits = sheetOf.size() == scene.size() && sheetOf.stream().allMatch(s -> s >= 1);
    if (!fits || sheets > Scene.MOST_SHEETS) {
      throw new IllegalArgumentException("sheet_of must name a sheet for every subject");
    }
    for (Occlusion o : scene.occlusions()) {
      if (this.sheetOf[o.front()] >= this.sheetOf[o.back()]) {
        throw new IllegalArgumentException(
            String.join(" – ", scene.names(List.of(o.front(), o.back())))
                + ": the first hides the second, but its sheet is not in front");
      }
    }
  }

  /** Makes it so many sheets. */
  public SheetAnswer to(int count) {
    if (count < 1 || count > Scene.MOST_SHEETS) {
      throw new IllegalArgumentException("sheets must be 1 to " + Scene.MOST_SHEETS);
    }
    return count < sheets ? merged(count) : divided(count);
  }

  private SheetAnswer merged(int count) {
    int[] painted = Arrays.stream(sheetOf).sorted().distinct().toArray();
    Run row = whole(painted);
    List<Occlusion> pairs = forcing(painted, row.runStart());
    if (pairs.size() + 1 > count) {
      List<Integer> chain =
          pairs.stream()
              .flatMap(p -> IntStream.of(p.front(), p.back()).boxed())
              .distinct()
              .toList();
      var needed = OptionalInt.of(pairs.size() + 1);
      return new NoPlan(NoPlan.Reason.ORDER, needed, chain, pairs);
    }
    int[] runs = new RunPartition(row, count).runs(count);
    int[] moved = new int[sheetOf.length];
    for (int i = 0; i < moved.length; i++) {
      moved[i] = runs[Arrays.binarySearch(painted, sheetOf[i])];
    }
    return planned(moved, count);
  }

  /** Whole sheets as the things to be cut into runs, each at its mean depth. */
  private Run whole(int[] painted) {
    double[] mean = new double[painted.length];
    double[] weight = new double[painted.length];
    double[] means = Spread.means(scene, sheetOf, sheets);
    for (int k = 0; k < painted.length; k++) {
      int sheet = painted[k];
      mean[k] = means[sheet - 1];
      weight[k] =
          IntStream.range(0, sheetOf.length)
              .filter(i -> sheetOf[i] == sheet)
              .mapToDouble(i -> scene.subjects().get(i).weight())
              .sum();
    }
    int[] start = new int[painted.length];
    for (int k = 1; k < painted.length; k++) {
      start[k] = start[k - 1];
      for (int near = k - 1; near >= start[k]; near--) {
        if (conflict(painted[near], painted[k]).isPresent()) {
          start[k] = near + 1;
        }
      }
    }
    return new Run(mean, weight, start, new int[painted.length]);
  }

  private Optional<Occlusion> conflict(int front, int back) {
    return scene.occlusions().stream()
        .filter(o -> sheetOf[o.front()] == front && sheetOf[o.back()] == back)
        .findFirst();
  }

  /** The pairs that force a boundary each, found by filling sheets from the front. */
  private List<Occlusion> forcing(int[] painted, int[] start) {
    List<Occlusion> pairs = new ArrayList<>();
    int open = 0;
    for (int k = 0; k < painted.length; k++) {
      if (start[k] > open) {
        pairs.add(
            conflict(painted[start[k] - 1], painted[k])
                .orElseGet(() -> scene.occlusions().first()));
        open = k;
      }
    }
    return pairs;
  }

  private SheetAnswer divided(int count) {
    if (count == sheets) {
      return planned(sheetOf, count);
    }
    List<Integer> order =
        IntStream.range(0, scene.size())
            .boxed()
            .sorted(
                Comparator.<Integer>comparingInt(i -> sheetOf[i])
                    .thenComparingDouble(i -> scene.subjects().get(i).depth())
                    .thenComparingInt(i -> i))
            .toList();
    int[] start = new int[order.size()];
    for (int at = 1; at < start.length; at++) {
      boolean same = sheetOf[order.get(at)] == sheetOf[order.get(at - 1)];
      start[at] = same ? start[at - 1] : at;
    }
    var row =
        new Run(
            order.stream().mapToDouble(i -> scene.subjects().get(i).depth()).toArray(),
            order.stream().mapToDouble(i -> scene.subjects().get(i).weight()).toArray(),
            start,
            new int[start.length]);
    int[] runs = new RunPartition(row, count).runs(count);
    int[] moved = new int[start.length];
    for (int at = 0; at < start.length; at++) {
      moved[order.get(at)] = runs[at];
    }
    return planned(moved, count);
  }

  private SheetPlan planned(int[] moved, int count) {
    return SheetPlan.of(scene, moved, count, Mode.ORDERED);
  }
}
