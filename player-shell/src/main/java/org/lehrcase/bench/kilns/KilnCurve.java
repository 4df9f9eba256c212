package org.lehrcase.bench.kilns;

import com.google.gson.JsonArray;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.glass.CurvePoint;
import org.lehrcase.core.glass.stress.KilnLeg;

/** The curve that the kiln runs, as points that straight lines may join. */
final class KilnCurve {
  /** Steps in which a stretch of free cooling is drawn. */
  private static final int FREE_STEPS = 14;

  private KilnCurve() {}

  static List<CurvePoint> points(List<KilnLeg> legs) {
    List<CurvePoint> points = new ArrayList<>();
    double seconds = 0;
    for (KilnLeg leg : legs) {
      if (points.isEmpty()) {
        points.add(new CurvePoint(0, leg.fromC()));
      }
      int steps = leg.settling().isPresent() ? FREE_STEPS : 1;
      for (int step = 1; step <= steps; step++) {
        double in = leg.seconds() * step / steps;
        points.add(new CurvePoint((seconds + in) / 3600, leg.celsiusAt(in)));
      }
      seconds += leg.seconds();
    }
    return points;
  }

  static JsonArray json(List<KilnLeg> legs) {
    var array = new JsonArray();
    for (CurvePoint point : points(legs)) {
      var pair = new JsonArray();
      pair.add(Math.rint(point.hours() * 1000) / 1000);
      pair.add(Math.rint(point.celsius() * 10) / 10);
      array.add(pair);
    }
    return array;
  }

  /** Returns the temperature of the kiln some hours after the start. */
  static double celsiusAt(List<KilnLeg> legs, double hours) {
    double seconds = hours * 3600;
    for (KilnLeg leg : legs) {
      if (seconds <= leg.seconds()) {
        return leg.celsiusAt(Math.max(0, seconds));
      }
      seconds -= leg.seconds();
    }
    return legs.get(legs.size() - 1).toC();
  }
}
