package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.TreeMap;

/** Plans the sheets of a scene, and says what more sheets would bring. */
public final class SheetPlanner {
  private final Scene given;
  private final OcclusionGraph graph;
  private final List<Integer> ring;
  private final Scene repaired;

  /** Looks at a scene; depths that contradict what hides what are moved as little as possible. */
  public SheetPlanner(Scene scene) {
    this.given = scene;
    this.graph = new OcclusionGraph(scene);
    this.ring = graph.ring();
    this.repaired = ring.isEmpty() ? scene.at(DepthRepair.repaired(scene, graph)) : scene;
  }

  /** Returns the scene with the depths that ordered plans are made with. */
  public Scene repaired() {
    return repaired;
  }

  /**
   * Plans.
   *
   * @param sheets 1 to {@link Scene#MOST_SHEETS}
   * @throws IllegalArgumentException if the number of sheets is out of range
   */
  public SheetAnswer plan(int sheets, Mode mode) {
    if (sheets < 1 || sheets > Scene.MOST_SHEETS) {
      throw new IllegalArgumentException("sheets must be 1 to " + Scene.MOST_SHEETS);
    }
    if (!ring.isEmpty()) {
      return new NoPlan(NoPlan.Reason.RING, OptionalInt.empty(), ring, List.of());
    }
    Mode kept = mode == Mode.FREE && given.size() > FreePlanner.MOST_SUBJECTS ? Mode.ORDERED : mode;
    Windows windows = windows(sheets, kept);
    if (!windows.crushed().isEmpty()) {
      return noPlan(sheets, kept, windows);
    }
    boolean bound = !given.occlusions().isEmpty() || !given.pins().isEmpty();
    if (kept == Mode.FREE && bound) {
      return SheetPlan.of(
          given, new FreePlanner(given, graph, sheets, known(sheets)).plan(), sheets, kept);
    }
    // where nothing is in anybody's way the best sheets are runs of the order of depth
    var found = new OrderedPlanner(repaired, graph, windows).plan(sheets);
    return SheetPlan.of(repaired, found.sheets(), sheets, kept).madeWith(found.proven(), moves());
  }

  /** The spread of the ordered plan, if there is one and no depth had to be moved for it. */
  private double known(int sheets) {
    Windows ordered = windows(sheets, Mode.ORDERED);
    if (!ordered.crushed().isEmpty() || !moves().isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    return Spread.of(repaired, new OrderedPlanner(repaired, graph, ordered).plan(sheets).sheets());
  }

  private Windows windows(int sheets, Mode mode) {
    return new Windows(mode == Mode.FREE ? given : repaired, graph, mode, sheets);
  }

  /**
   * Returns the first and the last sheet on which a subject may lie, by what hides what and by the
   * pins of the others; its own pin does not hold it.
   */
  public int[] range(int subject, int sheets) {
    return ranges(sheets).get(subject);
  }

  /** Returns {@link #range} of every subject, by place; nothing is to be had from a ring. */
  public List<int[]> ranges(int sheets) {
    Windows all = windows(sheets, Mode.FREE);
    List<int[]> ranges = new ArrayList<>();
    for (int i = 0; i < given.size(); i++) {
      Windows own = all;
      if (given.pin(i) > 0) {
        var others = new TreeMap<>(given.pins());
        others.remove(i);
        var unpinned = new Scene(given.subjects(), given.occlusions(), others);
        own = new Windows(unpinned, graph, Mode.FREE, sheets);
      }
      ranges.add(new int[] {own.first(i), own.last(i)});
    }
    return ranges;
  }

  /** Returns the fewest sheets of an ordered or a free plan; nothing if no number helps. */
  public OptionalInt fewest(Mode mode) {
    if (!ring.isEmpty()) {
      return OptionalInt.empty();
    }
    Windows windows = windows(Scene.MOST_SUBJECTS + Scene.MOST_SHEETS, mode);
    return windows.crushed().isEmpty() ? OptionalInt.of(windows.needed()) : OptionalInt.empty();
  }

  private NoPlan noPlan(int sheets, Mode mode, Windows windows) {
    OptionalInt needed = fewest(mode);
    if (needed.isEmpty()) {
      int stuck = windows.crushed().get(0);
      List<Integer> chain = new ArrayList<>(windows.chainBefore(stuck));
      List<Integer> behind = windows.chainBehind(stuck);
      chain.addAll(behind.subList(1, behind.size()));
      return new NoPlan(NoPlan.Reason.PIN, needed, chain, List.of());
    }
    Windows hiding = windows(sheets, Mode.FREE);
    if (hiding.needed() > sheets) {
      return new NoPlan(NoPlan.Reason.CHAIN, needed, hiding.longest(), List.of());
    }
    if (!given.pins().isEmpty()) {
      return new NoPlan(NoPlan.Reason.PIN, needed, windows.longest(), List.of());
    }
    List<Occlusion> pairs = DisjointPairs.of(repaired, graph, windows);
    return new NoPlan(NoPlan.Reason.ORDER, needed, windows.longest(), pairs);
  }

  private List<SheetPlan.Move> moves() {
    List<SheetPlan.Move> moves = new ArrayList<>();
    for (int i = 0; i < given.size(); i++) {
      double before = given.subjects().get(i).depth();
      double after = repaired.subjects().get(i).depth();
      if (before != after) {
        moves.add(new SheetPlan.Move(i, after, Math.exp(after - before), because(i)));
      }
    }
    return moves;
  }

  /** The pair that says so most loudly: of its own ones the most broken, or any that is broken. */
  private Occlusion because(int subject) {
    Comparator<Occlusion> byOwn =
        Comparator.comparing(o -> o.front() == subject || o.back() == subject);
    return given.occlusions().stream()
        .filter(o -> broken(o) > 0)
        .max(byOwn.thenComparingDouble(this::broken))
        .orElseThrow();
  }

  private double broken(Occlusion pair) {
    return given.subjects().get(pair.front()).depth() - given.subjects().get(pair.back()).depth();
  }

  /** Returns the ordered plans from the fewest sheets to so many, in that order. */
  public List<SheetPlan> choices(int most) {
    List<SheetPlan> plans = new ArrayList<>();
    for (int sheets = 1; sheets <= Math.min(most, Scene.MOST_SHEETS); sheets++) {
      if (plan(sheets, Mode.ORDERED) instanceof SheetPlan plan) {
        plans.add(plan);
      }
    }
    return plans;
  }
}
