package org.lehrcase.core.glass.kiln;

import java.time.Duration;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.plan.Stage;
import org.lehrcase.core.glass.stress.KilnPath;

/**
 * The times of a firing on the wall clock. Hours are counted as they pass, so that a change to or
 * from summer time moves what the clock shows and not the firing.
 */
public final class FiringClock {
  private static final double SPREAD = 0.1;

  private final List<PlannedSegment> plan;
  private final KilnPath.Path path;

  /**
   * Makes the clock of a plan.
   *
   * @param plan its lines
   * @param path the times of these lines
   */
  public FiringClock(List<PlannedSegment> plan, KilnPath.Path path) {
    this.plan = List.copyOf(plan);
    this.path = path;
  }

  /** Returns the times of a firing that starts at a moment, in order. */
  public List<ClockEntry> from(ZonedDateTime start) {
    List<ClockEntry> entries = new ArrayList<>();
    entries.add(entry("start", start, 0, true));
    for (int line = 0; line < plan.size(); line++) {
      KilnPath.LineTime time = path.times().get(line);
      switch (plan.get(line).stage()) {
        case BURN_OFF, WARMING ->
            entries.add(entry("close the vent at the latest", start, time.endHours(), true));
        case SQUEEZE -> entries.add(entry("squeeze begins", start, time.arrivalHours(), false));
        case TOP -> {
          entries.add(entry("top reached", start, time.arrivalHours(), true));
          entries.add(entry("top ends", start, time.endHours(), true));
        }
        default ->
            entries.add(
                entry(plan.get(line).segment().name() + " ends", start, time.endHours(), false));
      }
    }
    entries.add(entry("earliest lid time", start, path.hours(), true));
    return List.copyOf(entries);
  }

  /** Returns the start for which the top is reached at a moment. */
  public ZonedDateTime startForTop(ZonedDateTime topAt) {
    double hours = path.hours();
    for (int line = 0; line < plan.size(); line++) {
      if (plan.get(line).stage() == Stage.TOP) {
        hours = path.times().get(line).arrivalHours();
      }
    }
    return topAt.minus(duration(hours));
  }

  /** Returns the earliest lid time that is not at night: it waits for the morning if it has to. */
  public ZonedDateTime lidByDay(ZonedDateTime start, LocalTime morning, LocalTime evening) {
    ZonedDateTime lid = start.plus(duration(path.hours()));
    LocalTime at = lid.toLocalTime();
    if (at.isBefore(morning)) {
      return lid.with(morning);
    }
    return at.isAfter(evening) ? lid.plusDays(1).with(morning) : lid;
  }

  private static ClockEntry entry(String what, ZonedDateTime start, double hours, boolean be) {
    return new ClockEntry(
        what,
        start.plus(duration(hours)),
        start.plus(duration(hours * (1 - SPREAD))),
        start.plus(duration(hours * (1 + SPREAD))),
        be);
  }

  private static Duration duration(double hours) {
    return Duration.ofSeconds(Math.round(hours * 3600));
  }
}
