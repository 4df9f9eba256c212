package org.lehrcase.core.glass.stress;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.heat.HeatExchange;

/**
 * The curve that a kiln runs when it is told a schedule: what the lines say where the kiln can, and
 * the kiln's own pace where it cannot.
 */
public final class KilnPath {
  private static final double S_PER_HOUR = 3600;
  private static final double SAME_C = 1e-6;

  private final KilnPace pace;
  private final double lidC;
  private final boolean everyRateHeld;
  private final List<KilnLeg> legs = new ArrayList<>();
  private final List<LineTime> times = new ArrayList<>();
  private double nowC;
  private double seconds;
  private double startSeconds;
  private int line;

  /**
   * How a firing ends.
   *
   * @param lidC what the kiln shows when the lid may open
   * @param waitHours how long the core needs then to follow
   * @param everyRateHeld whether a kiln is taken that holds every rate on the way down; otherwise
   *     it is never faster than by itself
   */
  public record End(double lidC, double waitHours, boolean everyRateHeld) {}

  private KilnPath(KilnPace pace, double startC, End end) {
    this.pace = pace;
    this.lidC = Math.max(end.lidC(), pace.roomC() + 1);
    this.everyRateHeld = end.everyRateHeld();
    this.nowC = startC;
  }

  /**
   * When a line begins, reaches its target, and ends; hours since the start.
   *
   * @param line number of the line, from 0
   * @param startHours begin
   * @param arrivalHours target reached
   * @param endHours hold over
   * @param endC temperature at the end
   */
  public record LineTime(
      int line, double startHours, double arrivalHours, double endHours, double endC) {}

  /**
   * Legs and times of a schedule.
   *
   * @param legs pieces of the curve
   * @param times of each line
   */
  public record Path(List<KilnLeg> legs, List<LineTime> times) {
    /** Copies the lists. */
    public Path {
      legs = List.copyOf(legs);
      times = List.copyOf(times);
    }

    /** Returns hours from the start to the end. */
    public double hours() {
      return times.isEmpty() ? 0 : times.get(times.size() - 1).endHours();
    }
  }

  /**
   * Draws the curve. If the last line leaves the kiln hotter than the lid may be opened, the kiln
   * is taken to be switched off then and to cool by itself, as one more line; waiting for the core
   * is one more.
   *
   * @param lines of the schedule
   * @param pace how the kiln goes by itself
   * @param startC temperature at the start
   * @param end how the firing ends
   */
  public static Path of(List<FiringSegment> lines, KilnPace pace, double startC, End end) {
    var path = new KilnPath(pace, startC, end);
    for (FiringSegment segment : lines) {
      path.follow(segment);
    }
    if (path.nowC > path.lidC + SAME_C) {
      path.begin();
      path.settle(path.lidC);
      path.end(path.seconds);
    }
    if (end.waitHours() > 0) {
      path.begin();
      path.add(KilnLeg.even(path.line, path.nowC, path.nowC, end.waitHours() * S_PER_HOUR));
      path.end(path.seconds);
    }
    return new Path(path.legs, path.times);
  }

  private void follow(FiringSegment segment) {
    begin();
    double targetC = segment.targetC().orElse(Math.min(nowC, lidC));
    if (targetC > nowC + SAME_C) {
      heat(segment, targetC);
    } else if (targetC < nowC - SAME_C) {
      cool(segment, targetC);
    }
    double arrival = seconds;
    if (segment.holdMinutes() > 0) {
      add(KilnLeg.even(line, nowC, nowC, segment.holdMinutes() * 60));
    }
    end(arrival);
  }

  private void heat(FiringSegment segment, double targetC) {
    double asked = segment.rateCPerHour().orElse(Double.MAX_VALUE);
    boolean held = everyRateHeld && segment.rateCPerHour().isPresent();
    double rate = held ? asked : Math.min(asked, pace.heatingCPerHour());
    double length = (targetC - nowC) / rate * S_PER_HOUR;
    Optional<HeatExchange> exchange =
        segment.rateCPerHour().isEmpty() ? Optional.of(HeatExchange.IN_KILN) : Optional.empty();
    add(new KilnLeg(line, nowC, targetC, length, Optional.empty(), exchange));
  }

  private void cool(FiringSegment segment, double targetC) {
    if (segment.rateCPerHour().isEmpty()) {
      settle(targetC);
      return;
    }
    double rate = segment.rateCPerHour().getAsDouble();
    double slowestC = pace.roomC() + rate * pace.coolingHours(); // below it the kiln is slower
    double heldC = everyRateHeld ? targetC : Math.max(targetC, Math.min(nowC, slowestC));
    if (heldC < nowC - SAME_C) {
      add(KilnLeg.even(line, nowC, heldC, (nowC - heldC) / rate * S_PER_HOUR));
    }
    if (targetC < nowC - SAME_C) {
      settle(targetC);
    }
  }

  /** Lets the kiln cool by itself; it never quite reaches the room. */
  private void settle(double targetC) {
    double reached = Math.max(targetC, pace.roomC() + 1);
    if (reached < nowC - SAME_C) {
      add(
          KilnLeg.free(
              line,
              nowC,
              reached,
              new KilnLeg.Settling(pace.roomC(), pace.coolingHours() * S_PER_HOUR)));
    }
  }

  private void add(KilnLeg leg) {
    legs.add(leg);
    seconds += leg.seconds();
    nowC = leg.toC();
  }

  private void begin() {
    startSeconds = seconds;
  }

  private void end(double arrival) {
    times.add(
        new LineTime(
            line, startSeconds / S_PER_HOUR, arrival / S_PER_HOUR, seconds / S_PER_HOUR, nowC));
    line++;
  }
}
