package org.lehrcase.bench.kilns;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.store.FiringLogTable.Firing;

/** Readings of the electricity meter during a firing; they are kept with what came of it. */
public final class MeterBook {
  private static final String METER = "meter";
  private static final int MOST = 40;
  private static final double MILLIS_PER_HOUR = 3.6e6;

  private final JsonObject outcome;
  private final long startedAtMillis;

  private MeterBook(JsonObject outcome, long startedAtMillis) {
    this.outcome = outcome;
    this.startedAtMillis = startedAtMillis;
  }

  /** Opens the book of a firing. */
  public static MeterBook of(Firing firing) {
    return new MeterBook(
        JsonParser.parseString(firing.outcome()).getAsJsonObject(),
        firing.begun().startedAtMillis());
  }

  /** Returns the readings in order of time, each with {@code after_h} and {@code kwh}. */
  JsonArray readings() {
    JsonElement meter = outcome.get(METER);
    return meter != null && meter.isJsonArray() ? meter.getAsJsonArray() : new JsonArray();
  }

  /**
   * Adds a reading.
   *
   * @param atMillis when, UTC
   * @param kilowattHours what the meter shows
   * @return the outcome with it, as JSON
   * @throws FieldTrouble if the meter would run backwards, or there are too many
   */
  public String with(long atMillis, double kilowattHours) throws FieldTrouble {
    var reading = new JsonObject();
    double hours = Math.rint((atMillis - startedAtMillis) / MILLIS_PER_HOUR * 1000) / 1000;
    reading.addProperty("after_h", hours);
    reading.addProperty("kwh", kilowattHours);
    List<JsonObject> all = new ArrayList<>(List.of(reading));
    readings().forEach(one -> all.add(one.getAsJsonObject()));
    if (all.size() > MOST) {
      throw new FieldTrouble("meter_kwh", "has " + MOST + " readings already");
    }
    all.sort(Comparator.comparingDouble(one -> one.get("after_h").getAsDouble()));
    double before = 0;
    for (JsonObject one : all) {
      double shown = one.get("kwh").getAsDouble();
      if (shown < before) {
        throw new FieldTrouble(
            "meter_kwh", "must not fall: a meter of " + before + " kWh was read before " + shown);
      }
      before = shown;
    }
    var sorted = new JsonArray();
    all.forEach(sorted::add);
    JsonObject kept = outcome.deepCopy();
    kept.add(METER, sorted);
    return kept.toString();
  }
}
