package org.lehrcase.core.glass;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.lehrcase.core.table.Problem;
import org.lehrcase.core.table.TextTable;

/**
 * A firing schedule, read from a table with the header {@code
 * step,rate_c_per_h,target_c,hold_min,note} or the same with {@code _f}.
 *
 * <p>A rate may be {@code free}, the last target {@code off}. What the table says is not judged for
 * safety or for the glass: problems are only what no kiln can do or what looks like a slip.
 *
 * @param unit unit of the file; everything here is in °C
 * @param segments in order
 * @param problems what is wrong or doubtful, by line
 */
public record FiringSchedule(
    TemperatureUnit unit, List<FiringSegment> segments, List<Problem> problems) {

  /** Where the curve of a switched-off kiln ends: cool enough to touch, never below. */
  public static final double LID_C = 50;

  /** Steps in which a free stretch is drawn. */
  private static final int FREE_STEPS = 16;

  /** Copies the lists. */
  public FiringSchedule {
    segments = List.copyOf(segments);
    problems = List.copyOf(problems);
  }

  /** Says whether a table is a firing schedule, by its header row. */
  public static boolean isRecognised(TextTable table) {
    return FiringTable.unitOf(table).isPresent();
  }

  /** Reads a schedule; always gives what could be read. */
  public static FiringSchedule parse(String text) {
    TextTable table = TextTable.parse(text);
    List<Problem> problems = new ArrayList<>(table.problems());
    var unit = FiringTable.unitOf(table);
    if (unit.isEmpty()) {
      problems.add(
          Problem.ofFile(
              "the first row must be step,rate_c_per_h,target_c,hold_min,note for °C, or"
                  + " step,rate_f_per_h,target_f,hold_min,note for °F"));
      return new FiringSchedule(TemperatureUnit.CELSIUS, List.of(), problems);
    }
    var reading = new FiringTable(unit.get());
    reading.read(table);
    problems.addAll(reading.problems());
    if (reading.segments().isEmpty()) {
      problems.add(Problem.ofFile("the schedule has no steps"));
    }
    return new FiringSchedule(unit.get(), reading.segments(), problems);
  }

  /** Says whether times are estimates, because a stretch other than switching off is free. */
  public boolean isEstimate() {
    return segments.stream().anyMatch(s -> !s.isOff() && s.rateCPerHour().isEmpty());
  }

  /**
   * Returns the hours from the start until the controller has done its last step; what the kiln
   * needs to cool after that is not counted.
   *
   * @param startC temperature of the kiln at the start
   * @param pace how the kiln goes where the schedule says free
   */
  public double controllerHours(double startC, KilnPace pace) {
    double hours = 0;
    double fromC = startC;
    for (FiringSegment segment : segments) {
      if (!segment.isOff()) {
        double targetC = segment.targetC().orElse(fromC);
        hours += rampHours(segment, fromC, targetC, pace) + segment.holdMinutes() / 60;
        fromC = targetC;
      }
    }
    return hours;
  }

  /** Returns {@link #curve(double, KilnPace)} for a kiln that nobody has measured. */
  public List<CurvePoint> curve(double startC) {
    return curve(startC, KilnPace.ASSUMED);
  }

  /**
   * Returns temperature over time: what the controller asks for, and behind {@code off} the kiln's
   * own cooling down to {@link #LID_C}.
   *
   * @param startC temperature of the kiln at the start
   * @param pace how the kiln goes where the schedule says free
   * @return points in order of time; the first is (0, startC)
   */
  public List<CurvePoint> curve(double startC, KilnPace pace) {
    List<CurvePoint> points = new ArrayList<>();
    points.add(new CurvePoint(0, startC));
    for (FiringSegment segment : segments) {
      CurvePoint from = points.get(points.size() - 1);
      double targetC = segment.targetC().orElse(Math.min(from.celsius(), LID_C));
      double hours = rampHours(segment, from.celsius(), targetC, pace);
      if (segment.rateCPerHour().isEmpty() && targetC < from.celsius()) {
        addCooling(points, from, hours, pace);
      }
      if (hours > 0) {
        points.add(new CurvePoint(from.hours() + hours, targetC));
      }
      if (segment.holdMinutes() > 0) {
        points.add(new CurvePoint(from.hours() + hours + segment.holdMinutes() / 60, targetC));
      }
    }
    return List.copyOf(points);
  }

  private static void addCooling(
      List<CurvePoint> points, CurvePoint from, double hours, KilnPace pace) {
    for (int step = 1; step < FREE_STEPS; step++) {
      double passed = hours * step / FREE_STEPS;
      points.add(new CurvePoint(from.hours() + passed, pace.cooledC(from.celsius(), passed)));
    }
  }

  /** A free target at or below the room is drawn as reached at the room plus one degree. */
  private static double rampHours(
      FiringSegment segment, double fromC, double targetC, KilnPace pace) {
    OptionalDouble rate = segment.rateCPerHour();
    if (rate.isPresent()) {
      return Math.abs(targetC - fromC) / rate.getAsDouble();
    }
    double reached = targetC < fromC ? Math.max(targetC, pace.roomC() + 1) : targetC;
    return reached >= fromC && targetC < fromC ? 0 : pace.freeHours(fromC, reached);
  }
}
