package org.lehrcase.core.layers.assign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;

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
    if (kept == Mode.FREE) {
      return SheetPlan.of(given, new FreePlanner(given, graph, sheets).plan(), sheets, kept);
    }
    var found = new OrderedPlanner(repaired, graph, windows).plan(sheets);
    return SheetPlan.of(repaired, found.sheets(), sheets, kept).madeWith(found.proven(), moves());
  }

  private Windows windows(int sheets, Mode mode) {
    return new Windows(mode == Mode.FREE ? given : repaired, graph, mode, sheets);
  }

  /** Returns the sheets on which a subject may lie by what hides what and by the pins. */
  public int[] range(int subject, int sheets) {
    Windows windows = windows(sheets, Mode.FREE);
    return new int[] {windows.first(subject), windows.last(subject)};
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
