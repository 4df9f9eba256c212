package org.lehrcase.bench.kilns;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.glass.CurvePoint;

/** A firing's curve as points that straight lines join. */
final class PlannedCurve {
  private final List<CurvePoint> points;

  PlannedCurve(List<CurvePoint> points) {
    this.points = List.copyOf(points);
  }

  /** Reads the curve of a plan that the log has kept. */
  static PlannedCurve of(JsonObject plan) {
    List<CurvePoint> points = new ArrayList<>();
    for (JsonElement element : plan.getAsJsonObject("answer").getAsJsonArray("curve")) {
      JsonArray pair = element.getAsJsonArray();
      points.add(new CurvePoint(pair.get(0).getAsDouble(), pair.get(1).getAsDouble()));
    }
    return new PlannedCurve(points);
  }

  List<CurvePoint> points() {
    return points;
  }

  /** Returns the temperature at an hour; behind its end the kiln is as cold as it was there. */
  double celsiusAt(double hours) {
    CurvePoint before = points.get(0);
    for (CurvePoint point : points) {
      if (hours <= point.hours()) {
        double length = point.hours() - before.hours();
        double share = length > 0 ? Math.max(0, (hours - before.hours()) / length) : 1;
        return before.celsius() + share * (point.celsius() - before.celsius());
      }
      before = point;
    }
    return before.celsius();
  }
}
