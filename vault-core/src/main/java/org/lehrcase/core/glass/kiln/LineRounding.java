package org.lehrcase.core.glass.kiln;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.plan.Limit;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.plan.Stage;

/** Rounds lines to the safe side, and spreads over several lines what one cannot hold. */
final class LineRounding {
  /** Steps of a staircase, K: a sudden change of three would be all that a surface may bear. */
  private static final double STAIR_K = 2;

  private final Controller controller;
  private final double roomC;
  private final List<String> changes = new ArrayList<>();

  LineRounding(Controller controller, double roomC) {
    this.controller = controller;
    this.roomC = roomC;
  }

  List<String> changes() {
    return changes;
  }

  List<PlannedSegment> lines(List<PlannedSegment> plan) {
    changes.clear();
    List<PlannedSegment> lines = new ArrayList<>();
    double fromC = roomC;
    for (PlannedSegment line : plan) {
      PlannedSegment rounded = rounded(line, fromC);
      if (needsStairs(rounded)) {
        stairs(lines, rounded, fromC);
      } else {
        split(lines, rounded);
      }
      fromC = rounded.segment().targetC().orElse(fromC);
    }
    return lines;
  }

  private PlannedSegment rounded(PlannedSegment line, double fromC) {
    FiringSegment s = line.segment();
    var segment =
        new FiringSegment(
            s.name(),
            rate(s.rateCPerHour()),
            OptionalDouble.of(target(line.stage(), s.targetC().orElse(fromC), fromC)),
            Math.max(0, Math.ceil(s.holdMinutes() - 1e-9)),
            s.note());
    return new PlannedSegment(line.stage(), segment, line.rateLimit(), line.holdLimit());
  }

  /** The soak and the end of warming go up to a whole degree, ends of slopes down. */
  private double target(Stage stage, double targetC, double fromC) {
    double own = controller.unit().ofCelsius(targetC);
    double whole = Math.rint(own);
    if (stage == Stage.SOAK || stage == Stage.WARMING) {
      whole = Math.ceil(own - 1e-6);
    } else if (targetC < fromC) {
      whole = Math.floor(own + 1e-6);
    }
    return controller.unit().toCelsius(whole);
  }

  private OptionalDouble rate(OptionalDouble asked) {
    if (asked.isEmpty() && !controller.freeCode().isEmpty()) {
      return asked;
    }
    double fastest = controller.unit().rateToCelsius(controller.fastestPerHour());
    double typed = controller.roundedDown(asked.orElse(fastest));
    return typed > 0 ? OptionalDouble.of(controller.unit().rateToCelsius(typed)) : asked;
  }

  private boolean needsStairs(PlannedSegment line) {
    OptionalDouble rate = line.segment().rateCPerHour();
    return rate.isPresent()
        && controller.roundedDown(rate.getAsDouble()) < controller.slowestPerHour() - 1e-9;
  }

  /** Small steps, each held for as long as the slow rate would have taken. */
  private void stairs(List<PlannedSegment> lines, PlannedSegment line, double fromC) {
    FiringSegment s = line.segment();
    double targetC = s.targetC().orElse(fromC);
    int steps = (int) Math.max(1, Math.ceil(Math.abs(targetC - fromC) / STAIR_K));
    double step = (targetC - fromC) / steps;
    double minutes = Math.ceil(Math.abs(step) / s.rateCPerHour().orElseThrow() * 60 - 1e-9);
    double slowest = controller.unit().rateToCelsius(controller.slowestPerHour());
    changes.add(s.name() + " becomes a staircase of " + steps + " steps");
    for (int i = 1; i <= steps; i++) {
      var stair =
          new FiringSegment(
              s.name() + " " + i,
              OptionalDouble.of(slowest),
              OptionalDouble.of(fromC + i * step),
              i == steps ? minutes + s.holdMinutes() : minutes,
              s.note());
      split(lines, line.with(stair, Limit.CONTROLLER));
    }
  }

  /** A hold that is too long for one line goes on in the next, at the same temperature. */
  private void split(List<PlannedSegment> lines, PlannedSegment line) {
    FiringSegment s = line.segment();
    double most = Math.floor(controller.longestHoldMinutes());
    double rest = s.holdMinutes();
    if (rest > most) {
      changes.add(s.name() + ": the hold goes on in another line");
    }
    do {
      double part = Math.min(rest, most);
      var piece = new FiringSegment(s.name(), s.rateCPerHour(), s.targetC(), part, s.note());
      lines.add(new PlannedSegment(line.stage(), piece, line.rateLimit(), line.holdLimit()));
      rest -= part;
    } while (rest > 0);
  }
}
