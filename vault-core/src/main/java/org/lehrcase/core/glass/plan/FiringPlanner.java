package org.lehrcase.core.glass.plan;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.glass.heat.SteadyRamp;
import org.lehrcase.core.glass.kind.MakerRow;
import org.lehrcase.core.glass.kind.Viscosity;

/** Proposes the lines of a firing from closed forms; the simulation then judges them. */
public final class FiringPlanner {
  /** log10 Pa s at which air still leaves and sheets begin to sink together. */
  public static final double SQUEEZE_LOG10 = 6.8;

  /** log10 Pa s of full flow, 4.3 to 4.6. */
  public static final double TOP_LOG10 = 4.45;

  /** Where most enamels melt; a default, never a constant: 1,100 °F. Common practice, no source. */
  public static final double ENAMEL_C = 593;

  private static final double DRY_C = 120;
  private static final double DRY_MINUTES = 45;
  private static final double DRY_C_PER_HOUR = 100;
  private static final double BURNT_C = 540;
  private static final double BURN_MINUTES = 20;
  private static final double CERAMICS_C_PER_HOUR = 150;
  private static final double SQUEEZE_C_PER_HOUR = 90;
  private static final double SQUEEZE_MINUTES = 30;
  private static final double WIDE_MM = 200;
  private static final double TOP_C_PER_HOUR = 240;
  private static final double TOP_MINUTES = 15;
  private static final double LAG_K = 50;
  private static final double WARM_ABOVE_ANNEALING_K = 20;
  private static final double ENAMEL_C_PER_HOUR = 200;
  private static final double SMOKE_C_PER_HOUR = 150;
  private static final double ENAMEL_MINUTES = 10;
  private static final String VENT = "vent open to here, room aired; then closed";

  private final PlanWish wish;
  private final AnnealRule rule;
  private final Viscosity viscosity;
  private final List<PlannedSegment> lines = new ArrayList<>();

  private FiringPlanner(PlanWish wish) {
    this.wish = wish;
    this.rule = new AnnealRule(wish.glass(), wish.block(), wish.level(), wish.pace().roomC());
    this.viscosity = wish.glass().viscosity();
  }

  /** Proposes a firing. */
  public static FiringPlan plan(PlanWish wish) {
    return new FiringPlanner(wish).plan();
  }

  private FiringPlan plan() {
    Anneal anneal = rule.slower();
    switch (wish.task()) {
      case FUSE -> fuse();
      case REFIRE -> {
        warm();
        top();
      }
      case ANNEAL -> warm();
      case ENAMEL -> enamel();
    }
    if (wish.task() == FiringTask.ENAMEL) {
      coolSheet(anneal);
    } else {
      cool(anneal);
    }
    return new FiringPlan(
        wish, lines, anneal, rule.computed(), rule.makers(), anneal.endsC().get(2));
  }

  private void fuse() {
    double rise = riseCPerHour();
    Limit limit = rise < CERAMICS_C_PER_HOUR ? Limit.CORE : Limit.CERAMICS;
    lines.add(
        PlannedSegment.ramp(Stage.DRYING, Math.min(DRY_C_PER_HOUR, rise), DRY_C, Limit.CERAMICS)
            .held(DRY_MINUTES, Limit.DAMP, "everything dry"));
    lines.add(
        PlannedSegment.ramp(Stage.BURN_OFF, rise, BURNT_C, limit)
            .held(BURN_MINUTES, Limit.BINDERS, VENT));
    double settle = 3 * rule.coreHours() * 60;
    double air = SQUEEZE_MINUTES + (wish.block().widestMm() > WIDE_MM ? SQUEEZE_MINUTES : 0);
    lines.add(
        PlannedSegment.ramp(
                Stage.SQUEEZE,
                Math.min(SQUEEZE_C_PER_HOUR, rise),
                round(viscosity.celsiusAt(SQUEEZE_LOG10)),
                rise < SQUEEZE_C_PER_HOUR ? Limit.CORE : Limit.AIR)
            .held(minutes(Math.max(air, settle)), settle > air ? Limit.CORE : Limit.AIR, ""));
    top();
  }

  private void warm() {
    double rate = Math.min(rule.heatingCPerHour(), CERAMICS_C_PER_HOUR);
    lines.add(
        PlannedSegment.ramp(
                Stage.WARMING,
                rate,
                round(viscosity.annealingC() + WARM_ABOVE_ANNEALING_K),
                rate < CERAMICS_C_PER_HOUR ? Limit.CORE_TENSION : Limit.CERAMICS)
            .held(minutes(3 * rule.coreHours() * 60), Limit.CORE, VENT));
  }

  private void top() {
    double settle = 2 * rule.coreHours() * 60;
    lines.add(
        PlannedSegment.ramp(Stage.TOP, TOP_C_PER_HOUR, topC(), Limit.CLOUDING)
            .held(
                minutes(Math.max(TOP_MINUTES, settle)),
                settle > TOP_MINUTES ? Limit.CORE : Limit.FLOW,
                "be there"));
  }

  private void enamel() {
    double rise = Math.min(SMOKE_C_PER_HOUR, riseCPerHour());
    double top = wish.topC().orElse(ENAMEL_C);
    double burnt = Math.min(BURNT_C, top - WARM_ABOVE_ANNEALING_K);
    lines.add(
        PlannedSegment.ramp(Stage.BURN_OFF, rise, burnt, Limit.BINDERS)
            .held(ENAMEL_MINUTES, Limit.BINDERS, VENT));
    lines.add(
        PlannedSegment.ramp(Stage.TOP, ENAMEL_C_PER_HOUR, top, Limit.CERAMICS)
            .held(ENAMEL_MINUTES, Limit.ENAMEL, "the maker of the paint names its own heat"));
  }

  /** Free to the soak, then the three slopes. */
  private void cool(Anneal anneal) {
    lines.add(
        PlannedSegment.free(Stage.SOAK, round(anneal.soakC()), Limit.KILN_COOLING)
            .held(minutes(anneal.soakHours() * 60), anneal.soakLimit(), "lid stays shut"));
    Stage[] stages = {Stage.SLOPE_1, Stage.SLOPE_2, Stage.SLOPE_3};
    for (int slope = 0; slope < MakerRow.SLOPES; slope++) {
      double target = Math.floor(anneal.endsC().get(slope));
      lines.add(
          PlannedSegment.ramp(
              stages[slope],
              anneal.ratesCPerHour().get(slope),
              target,
              limit(anneal, slope, target)));
    }
  }

  /** A sheet may cool as it likes, but not faster than sheets are known to bear. */
  private void coolSheet(Anneal anneal) {
    lines.add(
        PlannedSegment.free(Stage.SOAK, round(anneal.soakC()), Limit.KILN_COOLING)
            .held(minutes(anneal.soakHours() * 60), anneal.soakLimit(), "lid stays shut"));
    double rate = Math.min(ENAMEL_C_PER_HOUR, anneal.ratesCPerHour().get(0));
    lines.add(
        PlannedSegment.ramp(
            Stage.SLOPE_1, rate, Math.floor(anneal.endsC().get(1)), Limit.SURFACE_TENSION));
    lines.add(
        PlannedSegment.ramp(
            Stage.SLOPE_3,
            Math.min(ENAMEL_C_PER_HOUR, anneal.ratesCPerHour().get(2)),
            Math.floor(anneal.endsC().get(2)),
            Limit.KILN_COOLING));
  }

  /** The kiln is what limits a slope when it needs most of the time by itself. */
  private Limit limit(Anneal anneal, int slope, double targetC) {
    double fromC = slope == 0 ? anneal.soakC() : anneal.endsC().get(slope - 1);
    double asked = (fromC - targetC) / anneal.ratesCPerHour().get(slope);
    double reached = Math.max(targetC, wish.pace().roomC() + 1);
    double alone = reached < fromC ? wish.pace().freeHours(fromC, reached) : 0;
    return alone > asked ? Limit.KILN_COOLING : anneal.rateLimits().get(slope);
  }

  private double riseCPerHour() {
    double bySeconds =
        SteadyRamp.of(wish.block().slab(), wish.glass().material()).rateForLag(LAG_K);
    return Math.min(CERAMICS_C_PER_HOUR, bySeconds * 3600 * wish.level().factor());
  }

  private double topC() {
    return wish.topC().orElse(round(viscosity.celsiusAt(TOP_LOG10)));
  }

  private static double round(double celsius) {
    return Math.rint(celsius);
  }

  /** Holds are rounded up to whole minutes. */
  private static double minutes(double exact) {
    return Math.ceil(exact - 1e-9);
  }
}
