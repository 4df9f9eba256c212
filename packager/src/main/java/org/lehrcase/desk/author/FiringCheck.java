package org.lehrcase.desk.author;

import java.util.List;
import java.util.Locale;
import org.lehrcase.core.glass.FiringSchedule;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.GlassKinds;
import org.lehrcase.core.glass.plan.Block;
import org.lehrcase.core.glass.plan.FiringReview;
import org.lehrcase.core.glass.plan.FiringWarning;
import org.lehrcase.core.glass.plan.StatedBlock;
import org.lehrcase.core.glass.stress.PeakTension;
import org.lehrcase.core.glass.stress.SimulatedFiring;

/**
 * Runs a lesson's schedule through the block that the lesson states, and says with figures what a
 * careful kiln-former would want to know before students type it in.
 */
final class FiringCheck {
  /**
   * Said in a step's note, it keeps a firing of the empty kiln from being taken for one of glass.
   */
  static final String EMPTY_KILN = "no glass in the kiln";

  private static final String EXAMPLE =
      "write, for instance: five sheets of 90 x 60 x 3 mm; fused 14 mm";

  private static final String USUAL_GLASS = "coe-90";

  /** log10 Pa s below which a stack begins to be one block. */
  private static final double BLOCK_LOG10 = 7;

  private final SourceLesson lesson;
  private final List<Finding> findings;

  FiringCheck(SourceLesson lesson, List<Finding> findings) {
    this.lesson = lesson;
    this.findings = findings;
  }

  /** Checks a schedule that could be read without a problem. */
  void run(SourceAsset asset, FiringSchedule schedule) {
    StatedBlock stated = StatedBlock.parse(lesson.block().orElse(""));
    boolean empty =
        schedule.segments().stream()
            .anyMatch(s -> s.note().toLowerCase(Locale.ROOT).contains(EMPTY_KILN));
    if (empty || schedule.segments().isEmpty() || !stated.problems().isEmpty()) {
      return;
    }
    if (!stated.isUsable()) {
      findings.add(
          Finding.note(
              asset.place(),
              "was not run through a block: 'block' in lesson.yaml says no thickness",
              EXAMPLE));
      return;
    }
    GlassKind glass =
        GlassKinds.byId(stated.glassId().isEmpty() ? USUAL_GLASS : stated.glassId()).orElseThrow();
    Block block = block(stated, glass, schedule);
    var trial = FiringReview.Trial.in(KilnPace.ASSUMED, glass, block, schedule.segments());
    FiringReview review = FiringReview.of(trial);
    findings.add(
        Finding.note(
            asset.place(),
            summary(review),
            "compare it with your own kiln and glass; an estimate, ±30 %"));
    for (FiringWarning warning : review.warnings()) {
      if (warning.asksForChange()) {
        findings.add(
            Finding.doubt(
                asset.place(),
                warning.text(),
                "look at the schedule again, or correct 'block' in lesson.yaml"));
      }
    }
  }

  /** Reports a statement that cannot be true, once for the lesson. */
  void reportStatement() {
    for (String problem : StatedBlock.parse(lesson.block().orElse("")).problems()) {
      findings.add(Finding.error(lesson.folder() + "/lesson.yaml", "'block': " + problem, EXAMPLE));
    }
  }

  /** A schedule that is too cool to fuse fires single sheets, if the lesson says what they are. */
  private static Block block(StatedBlock stated, GlassKind glass, FiringSchedule schedule) {
    double highest =
        schedule.segments().stream().mapToDouble(s -> s.targetC().orElse(0)).max().orElse(0);
    boolean fuses = highest >= glass.viscosity().celsiusAt(BLOCK_LOG10);
    if (!fuses && stated.sheetMm().isPresent()) {
      double sheet = Math.max(stated.sheetMm().getAsDouble(), Block.THINNEST_MM);
      return new Block(sheet, stated.faces(), true, 0, stated.widestMm());
    }
    double mm = stated.fusedMm().orElse(stated.sheetMm().orElse(Block.THINNEST_MM));
    return new Block(mm, stated.faces(), !fuses, 0, stated.widestMm());
  }

  private static String summary(FiringReview review) {
    SimulatedFiring simulated = review.simulated();
    PeakTension peak = simulated.main().peak();
    Block block = review.trial().block();
    double lag = simulated.lags().stream().mapToDouble(l -> l.largestK()).max().orElse(0);
    return String.format(
        Locale.ROOT,
        "on %s mm of %s, cooled from %s: at most %.1f MPa of tension (%.0f mm deep, kiln at %.0f"
            + " °C), %.2f MPa stays in the core, which is up to %.0f K behind; %.0f h to the lid",
        String.valueOf(block.thicknessMm()).replaceAll("\\.0$", ""),
        review.trial().glass().id(),
        block.faces() == Faces.ONE ? "the top only" : "both faces",
        peak.mpa(),
        peak.depthMm(),
        peak.kilnC(),
        simulated.main().residualCoreMpa(),
        lag,
        review.totalHours());
  }
}
