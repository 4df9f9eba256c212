package org.lehrcase.bench.kilns;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.lehrcase.bench.store.FiringLogTable.Firing;
import org.lehrcase.bench.store.FiringLogTable.Reading;
import org.lehrcase.core.glass.CurvePoint;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.kiln.KilnFit;
import org.lehrcase.core.glass.kiln.MeterFit;

/** What a firing of the log says of the kiln itself: its own cooling, and its loss by the meter. */
public final class LogLearning {
  private static final double MILLIS_PER_HOUR = 3.6e6;
  private static final double HUNDREDTHS = 100;

  private final Firing firing;
  private final List<Reading> readings;
  private final JsonObject plan;

  /**
   * Takes a firing.
   *
   * @param firing the firing, whose outcome may have {@code meter}: pairs of {@code after_h} and
   *     {@code kwh}
   * @param readings its readings in order of time
   */
  public LogLearning(Firing firing, List<Reading> readings) {
    this.firing = firing;
    this.readings = List.copyOf(readings);
    this.plan = JsonParser.parseString(firing.begun().plan()).getAsJsonObject();
  }

  /**
   * Returns {@code cooling_h} and {@code loss_w_per_k}, as far as they follow, and {@code missing}:
   * why the other does not.
   */
  public JsonObject json() {
    var answer = new JsonObject();
    var missing = new JsonArray();
    double coolingHours = pace().coolingHours();
    try {
      coolingHours = rounded(KilnFit.coolingHours(alone(), pace().roomC()));
      answer.addProperty("cooling_h", coolingHours);
    } catch (IllegalArgumentException e) {
      missing.add("the kiln's own cooling: " + e.getMessage());
    }
    try {
      var pace = new KilnPace(pace().roomC(), coolingHours, pace().heatingCPerHour());
      double loss = MeterFit.lossWPerK(measured(), spans(), pace);
      answer.addProperty("loss_w_per_k", rounded(loss));
    } catch (IllegalArgumentException e) {
      missing.add("the loss: " + e.getMessage());
    }
    answer.add("missing", missing);
    return answer;
  }

  /** Readings behind the last line, when the kiln was left to itself. */
  private List<KilnFit.Reading> alone() {
    JsonObject answer = plan.getAsJsonObject("answer");
    JsonArray times = answer.getAsJsonArray("times");
    int last = Math.min(answer.getAsJsonArray("segments").size(), times.size()) - 1;
    double from = times.get(last).getAsJsonObject().get("end_h").getAsDouble();
    List<KilnFit.Reading> alone = new ArrayList<>();
    for (Reading reading : readings) {
      if (reading.celsius().isPresent() && hours(reading) >= from) {
        alone.add(new KilnFit.Reading(hours(reading), reading.celsius().getAsDouble()));
      }
    }
    return alone;
  }

  /** The plan's curve, moved to where the display was seen. */
  private List<CurvePoint> measured() {
    PlannedCurve planned = PlannedCurve.of(plan);
    List<CurvePoint> off = new ArrayList<>(List.of(new CurvePoint(0, 0)));
    var hours = new TreeSet<Double>();
    planned.points().forEach(point -> hours.add(point.hours()));
    for (Reading reading : readings) {
      double at = hours(reading);
      if (reading.celsius().isPresent() && at > off.get(off.size() - 1).hours()) {
        off.add(new CurvePoint(at, reading.celsius().getAsDouble() - planned.celsiusAt(at)));
        hours.add(at);
      }
    }
    var moved = new PlannedCurve(off);
    return hours.stream()
        .map(at -> new CurvePoint(at, planned.celsiusAt(at) + moved.celsiusAt(at)))
        .toList();
  }

  private List<MeterFit.Span> spans() {
    List<MeterFit.Span> spans = new ArrayList<>();
    Optional<JsonObject> before = Optional.empty();
    for (JsonElement element : meter()) {
      JsonObject now = element.getAsJsonObject();
      before.ifPresent(
          then ->
              spans.add(
                  new MeterFit.Span(
                      then.get("after_h").getAsDouble(),
                      now.get("after_h").getAsDouble(),
                      now.get("kwh").getAsDouble() - then.get("kwh").getAsDouble())));
      before = Optional.of(now);
    }
    return spans;
  }

  private JsonArray meter() {
    return MeterBook.of(firing).readings();
  }

  private KilnPace pace() {
    JsonElement kiln = plan.getAsJsonObject("request").get("kiln");
    JsonObject figures =
        kiln != null && kiln.isJsonObject() ? kiln.getAsJsonObject() : new JsonObject();
    KilnPace usual = KilnPace.ASSUMED;
    return new KilnPace(
        number(figures, "room_c", usual.roomC()),
        number(figures, "cooling_h", usual.coolingHours()),
        number(figures, "heating_c_per_h", usual.heatingCPerHour()));
  }

  private static double number(JsonObject figures, String name, double otherwise) {
    return figures.has(name) ? figures.get(name).getAsDouble() : otherwise;
  }

  private double hours(Reading reading) {
    return (reading.atMillis() - firing.begun().startedAtMillis()) / MILLIS_PER_HOUR;
  }

  private static double rounded(double value) {
    return Math.rint(value * HUNDREDTHS) / HUNDREDTHS;
  }
}
