package org.lehrcase.core.glass.plan;

import java.util.List;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.stress.FiringLoad;
import org.lehrcase.core.glass.stress.FiringSimulation;
import org.lehrcase.core.glass.stress.KilnPath;
import org.lehrcase.core.glass.stress.SimulatedFiring;

/**
 * A schedule, whoever wrote it, run through a block.
 *
 * @param trial what was tried
 * @param path the kiln's curve and the times of its lines
 * @param simulated what it does to the block
 * @param warnings what a careful kiln-former would want to know, most pressing first
 */
public record FiringReview(
    Trial trial, KilnPath.Path path, SimulatedFiring simulated, List<FiringWarning> warnings) {
  /** Copies the list. */
  public FiringReview {
    warnings = List.copyOf(warnings);
  }

  /**
   * A block, a kiln and a schedule.
   *
   * @param glass kind of glass
   * @param block what stands in the kiln
   * @param pace how the kiln goes by itself
   * @param lines of the schedule
   * @param everyRateHeld whether a kiln is taken that holds every rate that is asked for
   */
  public record Trial(
      GlassKind glass,
      Block block,
      KilnPace pace,
      List<FiringSegment> lines,
      boolean everyRateHeld) {
    /**
     * Copies the lines.
     *
     * @throws IllegalArgumentException if there are none
     */
    public Trial {
      lines = List.copyOf(lines);
      if (lines.isEmpty()) {
        throw new IllegalArgumentException("segments: a schedule has at least one line");
      }
    }

    /** Makes a trial in a kiln that is never faster than its own pace. */
    public static Trial in(KilnPace pace, GlassKind glass, Block block, List<FiringSegment> lines) {
      return new Trial(glass, block, pace, lines, false);
    }
  }

  /** Runs a schedule. */
  public static FiringReview of(Trial trial) {
    var rule =
        new AnnealRule(trial.glass(), trial.block(), CautionLevel.PUBLISHED, trial.pace().roomC());
    double lidC = rule.lidC();
    double startC = trial.pace().roomC();
    var end =
        new KilnPath.End(
            lidC, rule.lidWaitHours(trial.pace().coolingHours()), trial.everyRateHeld());
    KilnPath.Path path = KilnPath.of(trial.lines(), trial.pace(), startC, end);
    var load = new FiringLoad(trial.glass(), trial.block().slab(), trial.block().fused(), startC);
    SimulatedFiring simulated = FiringSimulation.run(load, path.legs());
    return new FiringReview(
        trial, path, simulated, new ReviewNotes(trial, path, simulated, lidC).all());
  }

  /** Runs a plan in the kiln that it was made for. */
  public static FiringReview of(FiringPlan plan) {
    PlanWish wish = plan.wish();
    // A sheet of enamel is one piece from the start, whatever the stack will be.
    Block block = wish.task() == FiringTask.ENAMEL ? asOnePiece(wish.block()) : wish.block();
    return of(Trial.in(wish.pace(), wish.glass(), block, plan.lines()));
  }

  /** Returns hours from the start until the lid may open. */
  public double totalHours() {
    return path.hours();
  }

  private static Block asOnePiece(Block block) {
    return new Block(
        block.thicknessMm(), block.faces(), true, block.bareShelfMm(), block.widestMm());
  }
}
