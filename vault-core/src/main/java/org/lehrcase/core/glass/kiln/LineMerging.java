package org.lehrcase.core.glass.kiln;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.plan.Limit;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.plan.Stage;

/**
 * Saves lines in a stated order: burn-off into the squeeze, drying into what follows, first slope
 * into the second, last slope to the kiln itself if the kiln is nowhere faster, or else with the
 * slope before it. The slower rate wins, holds add up. The soak is never touched.
 */
final class LineMerging {
  private static final List<Stage> ORDER = List.of(Stage.BURN_OFF, Stage.DRYING, Stage.SLOPE_1);

  private final List<PlannedSegment> lines;
  private final KilnPace pace;
  private final List<String> changes = new ArrayList<>();

  LineMerging(List<PlannedSegment> lines, KilnPace pace) {
    this.lines = new ArrayList<>(lines);
    this.pace = pace;
  }

  List<PlannedSegment> lines() {
    return lines;
  }

  List<String> changes() {
    return changes;
  }

  /** Merges until so many lines are left, or nothing more may be merged. */
  void to(int most) {
    for (Stage stage : ORDER) {
      if (lines.size() > most) {
        intoNext(stage);
      }
    }
    if (lines.size() > most && lines.size() > 1) {
      saveLast();
    }
  }

  private void intoNext(Stage stage) {
    for (int at = 0; at + 1 < lines.size(); at++) {
      PlannedSegment line = lines.get(at);
      PlannedSegment next = lines.get(at + 1);
      if (line.stage() == stage && next.stage() != stage && next.stage() != Stage.SOAK) {
        changes.add(
            line.stage().words() + " and " + next.stage().words() + " share one line: slower rate");
        lines.set(at + 1, merged(line, next));
        lines.remove(at);
        return;
      }
    }
  }

  private static PlannedSegment merged(PlannedSegment line, PlannedSegment next) {
    OptionalDouble one = line.segment().rateCPerHour();
    OptionalDouble two = next.segment().rateCPerHour();
    double slower = Math.min(one.orElse(Double.MAX_VALUE), two.orElse(Double.MAX_VALUE));
    String note = (line.segment().note() + " " + next.segment().note()).strip();
    var segment =
        new FiringSegment(
            next.segment().name(),
            OptionalDouble.of(slower),
            next.segment().targetC(),
            line.segment().holdMinutes() + next.segment().holdMinutes(),
            note);
    return next.with(segment, Limit.CONTROLLER);
  }

  /** The kiln may take the last slope only where it is slower from the first degree on. */
  private void saveLast() {
    int last = lines.size() - 1;
    PlannedSegment slope = lines.get(last);
    PlannedSegment before = lines.get(last - 1);
    if (slope.stage() != Stage.SLOPE_3) {
      return;
    }
    double aboveRoomK = before.segment().targetC().orElse(Double.MAX_VALUE) - pace.roomC();
    double rate = slope.segment().rateCPerHour().orElse(Double.MAX_VALUE);
    if (aboveRoomK / pace.coolingHours() <= rate) {
      changes.add("the last slope is left to the kiln, which cools no faster by itself");
      lines.remove(last);
    } else if (before.stage() != Stage.SOAK) {
      changes.add("the last two slopes share one line: slower rate");
      lines.set(last, merged(before, slope));
      lines.remove(last - 1);
    }
  }
}
