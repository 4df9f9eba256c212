package org.lehrcase.bench.layers;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.layers.assign.Evidence;
import org.lehrcase.core.layers.outline.Outline;

/** How far away each subject is, by the best of what is told about it. */
final class DepthReader {
  private static final double EYE_M = 1.6;

  private final List<Fields> items;
  private final List<Optional<Outline>> outlines;
  private final Fields request;

  DepthReader(List<Fields> items, List<Optional<Outline>> outlines, Fields request) {
    this.items = items;
    this.outlines = outlines;
    this.request = request;
  }

  List<Double> depths() throws FieldTrouble {
    List<OptionalDouble> stated = new ArrayList<>();
    List<OptionalDouble> seen = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      stated.add(stated(items.get(i)));
      seen.add(seen(items.get(i), outlines.get(i)));
    }
    double focal = focal(stated, seen);
    Map<Double, Double> known = new HashMap<>();
    List<OptionalDouble> found = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      OptionalDouble depth = stated.get(i);
      if (depth.isEmpty() && seen.get(i).isPresent()) {
        depth = OptionalDouble.of(seen.get(i).getAsDouble() + focal);
      }
      found.add(depth);
      if (depth.isPresent() && items.get(i).has("rank")) {
        known.put(items.get(i).number("rank", 0), depth.getAsDouble());
      }
    }
    List<Double> depths = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      depths.add(found.get(i).isPresent() ? found.get(i).getAsDouble() : rank(items.get(i), known));
    }
    return depths;
  }

  private static OptionalDouble stated(Fields item) throws FieldTrouble {
    if (item.has("depth")) {
      return item.number("depth");
    }
    return item.has("distance_m")
        ? OptionalDouble.of(Math.log(item.number("distance_m", 0, 1e-3, 1e7)))
        : OptionalDouble.empty();
  }

  private OptionalDouble seen(Fields item, Optional<Outline> outline) throws FieldTrouble {
    try {
      if (item.has("real_height_m") && outline.isPresent()) {
        double drawn = outline.get().box().heightMm();
        return OptionalDouble.of(Evidence.bySize(item.number("real_height_m", 0), drawn));
      }
      if (item.has("foot_below_horizon_mm")) {
        double eye = request.number("eye_height_m", EYE_M);
        return OptionalDouble.of(Evidence.byFoot(eye, item.number("foot_below_horizon_mm", 0)));
      }
      return OptionalDouble.empty();
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of(item.path(""), e);
    }
  }

  /**
   * Logarithm of the focal length, which what is seen leaves out: as told, or from subjects of
   * which both are known; nothing needs it where nothing is stated.
   */
  private double focal(List<OptionalDouble> stated, List<OptionalDouble> seen) throws FieldTrouble {
    if (request.has("focal_mm")) {
      return Math.log(request.number("focal_mm", 0, 1e-3, 1e6));
    }
    double sum = 0;
    int both = 0;
    int lonely = -1;
    for (int i = 0; i < items.size(); i++) {
      if (stated.get(i).isPresent() && seen.get(i).isPresent()) {
        sum += stated.get(i).getAsDouble() - seen.get(i).getAsDouble();
        both++;
      }
      lonely = stated.get(i).isEmpty() && seen.get(i).isPresent() ? i : lonely;
    }
    boolean mixed = lonely >= 0 && stated.stream().anyMatch(OptionalDouble::isPresent);
    if (mixed && both == 0) {
      throw new FieldTrouble(
          items.get(lonely).path("depth"),
          "a size beside distances needs focal_mm, or one subject that has both");
    }
    return both == 0 ? 0 : sum / both;
  }

  private static double rank(Fields item, Map<Double, Double> known) throws FieldTrouble {
    if (!item.has("rank")) {
      throw new FieldTrouble(
          item.path("depth"),
          "is missing: depth, distance_m, real_height_m with a shape, foot_below_horizon_mm or"
              + " rank");
    }
    return Evidence.byRank(item.number("rank", 0, -10_000, 10_000), known);
  }
}
