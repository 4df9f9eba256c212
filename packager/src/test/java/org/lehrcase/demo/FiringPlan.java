package org.lehrcase.demo;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A firing of the demo: rates in degrees Celsius per hour, targets in Celsius, holds in minutes.
 */
record FiringPlan(String name, String title, List<Step> steps) {
  /** The room. */
  static final double ROOM_C = 20;

  /** How fast the demo kiln falls by itself near 800 degrees Celsius. */
  static final double FREE_C_PER_HOUR = 290;

  static final FiringPlan F1 =
      new FiringPlan(
          "F1",
          "color strips",
          List.of(
              new Step(200, 580, 10, "paint melts and shines"),
              new Step(0, 505, 15, "anneal; lid stays shut"),
              new Step(200, 370, 0, "no faster than this")));
  static final FiringPlan F2 =
      new FiringPlan(
          "F2",
          "wash",
          List.of(
              new Step(150, 580, 10, "slow while the medium smokes"),
              new Step(0, 505, 15, "anneal; lid stays shut"),
              new Step(200, 370, 0, "no faster than this")));
  static final FiringPlan F3 =
      new FiringPlan(
          "F3",
          "kelp, fish and coral",
          List.of(
              new Step(120, 450, 15, "vent until here, then close"),
              new Step(200, 590, 8, "opaque paints need the ten degrees more"),
              new Step(0, 505, 15, "anneal"),
              new Step(200, 370, 0, "no faster than this")));
  static final FiringPlan F4 =
      new FiringPlan(
          "F4",
          "bed bake-out",
          List.of(
              new Step(100, 120, 60, "dry dams and wash; no glass in the kiln"),
              new Step(150, 700, 15, "vent to 500; room empty and aired")));
  static final FiringPlan F5 =
      new FiringPlan(
          "F5",
          "block",
          List.of(
              new Step(100, 120, 45, "everything dry"),
              new Step(110, 540, 20, "loose sheets warm through"),
              new Step(90, 665, 75, "air leaves between the sheets"),
              new Step(240, 798, 25, "be there: full fuse"),
              new Step(0, 505, 300, "anneal soak"),
              new Step(7, 428, 0, "slowest part"),
              new Step(12, 373, 0, "a little faster"),
              new Step(38, 45, 0, "then off; lid stays shut")));

  /** One step; a rate of 0 means free, as the kiln can. */
  record Step(double rateCPerH, double targetC, double holdMin, String note) {
    boolean free() {
      return rateCPerH == 0;
    }
  }

  /** Returns corner points as {hours, Celsius}. */
  List<double[]> curve() {
    List<double[]> points = new ArrayList<>();
    double hours = 0;
    double celsius = ROOM_C;
    points.add(new double[] {hours, celsius});
    for (Step step : steps) {
      double rate = step.free() ? FREE_C_PER_HOUR : step.rateCPerH();
      hours += Math.abs(step.targetC() - celsius) / rate;
      celsius = step.targetC();
      points.add(new double[] {hours, celsius});
      hours += step.holdMin() / 60;
      points.add(new double[] {hours, celsius});
    }
    return points;
  }

  double hours() {
    List<double[]> points = curve();
    return points.get(points.size() - 1)[0];
  }

  /** Returns the temperature the controller asks for at an hour. */
  double celsiusAt(double hour) {
    List<double[]> points = curve();
    for (int i = 1; i < points.size(); i++) {
      double[] a = points.get(i - 1);
      double[] b = points.get(i);
      if (hour <= b[0] && b[0] > a[0]) {
        return Ease.mix(a[1], b[1], Math.max(0, (hour - a[0]) / (b[0] - a[0])));
      }
    }
    return points.get(points.size() - 1)[1];
  }

  /** Returns the file that a course folder holds. */
  String csv() {
    StringBuilder csv = new StringBuilder("step,rate_c_per_h,target_c,hold_min,note\n");
    int number = 1;
    for (Step step : steps) {
      String rate = step.free() ? "free" : String.format(Locale.ROOT, "%.0f", step.rateCPerH());
      csv.append(
          String.format(
              Locale.ROOT,
              "%d,%s,%.0f,%.0f,%s%n",
              number++,
              rate,
              step.targetC(),
              step.holdMin(),
              step.note()));
    }
    return csv.append(number)
        .append(",free,off,0,wait for the room\n")
        .toString()
        .replace("\r", "");
  }
}
