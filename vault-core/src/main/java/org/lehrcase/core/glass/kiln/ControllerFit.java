package org.lehrcase.core.glass.kiln;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Phrase;
import org.lehrcase.core.glass.say.Units;

/**
 * Turns a plan into what a controller can be told, always to the safe side: rates down, holds up,
 * the soak's temperature up, ends of slopes down. Simulate the result, not the plan.
 */
public final class ControllerFit {
  private final Controller controller;
  private final KilnPace pace;

  private ControllerFit(Controller controller, KilnPace pace) {
    this.controller = controller;
    this.pace = pace;
  }

  /** Fits a plan to a controller. */
  public static FittedPlan fit(List<PlannedSegment> plan, Controller controller, KilnPace pace) {
    return new ControllerFit(controller, pace).fit(plan);
  }

  private FittedPlan fit(List<PlannedSegment> plan) {
    Optional<PlannedSegment> tooHot =
        plan.stream()
            .filter(l -> l.segment().targetC().orElse(0) > controller.highestC() + 1e-6)
            .findFirst();
    if (tooHot.isPresent()) {
      return FittedPlan.refused(List.of(), tooHot(tooHot.get()));
    }
    var rounding = new LineRounding(controller, pace.roomC());
    List<PlannedSegment> lines = rounding.lines(plan);
    List<String> changes = new ArrayList<>();
    if (lines.size() > controller.lines()) {
      var merging = new LineMerging(plan, pace);
      merging.to(Math.max(1, controller.lines() - (lines.size() - plan.size())));
      lines = rounding.lines(merging.lines());
      changes.addAll(merging.changes());
    }
    changes.addAll(rounding.changes());
    return lines.size() > controller.lines()
        ? FittedPlan.refused(changes, tooLong(lines.size(), changes))
        : new FittedPlan(lines, typed(lines), changes, Optional.empty());
  }

  private Phrase tooHot(PlannedSegment line) {
    return Phrase.of(
            " needs {}, the kiln's highest set point is {}",
            Figure.celsius(line.segment().targetC().orElse(0)),
            Figure.celsius(controller.highestC()))
        .between("the " + Phrase.plain(line.segment().name()).words(), "");
  }

  private Phrase tooLong(int needed, List<String> changes) {
    Phrase reason =
        Phrase.plain(
            "the firing needs "
                + needed
                + " lines, the controller has "
                + controller.lines()
                + "; soak and first slope are never merged");
    boolean stairs = changes.stream().anyMatch(c -> c.contains("staircase"));
    return stairs
        ? reason.between(
            "",
            "; its slowest rate is too fast for this block, and a staircase takes a line a step")
        : reason;
  }

  private List<TypedLine> typed(List<PlannedSegment> lines) {
    List<TypedLine> typed = new ArrayList<>();
    for (PlannedSegment line : lines) {
      FiringSegment s = line.segment();
      long minutes = Math.round(s.holdMinutes());
      String rate =
          s.rateCPerHour().isEmpty()
              ? controller.freeCode()
              : shown(controller.roundedDown(s.rateCPerHour().getAsDouble()));
      typed.add(
          new TypedLine(
              typed.size() + 1,
              s.name(),
              rate,
              shown(Math.rint(controller.unit().ofCelsius(s.targetC().orElse(0)))),
              minutes / 60 + (minutes % 60 < 10 ? ":0" : ":") + minutes % 60));
    }
    return typed;
  }

  private static String shown(double number) {
    String text = Figure.number(number, 3).in(Units.METRIC);
    int end = text.length();
    while (text.charAt(end - 1) == '0') {
      end--;
    }
    return text.substring(0, text.charAt(end - 1) == '.' ? end - 1 : end);
  }
}
