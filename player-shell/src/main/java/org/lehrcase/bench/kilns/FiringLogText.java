package org.lehrcase.bench.kilns;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.lehrcase.bench.store.FiringLogTable.Firing;
import org.lehrcase.bench.store.FiringLogTable.Reading;

/** A firing of the log: readings against the prediction, as an answer, as CSV and as JSON. */
public final class FiringLogText {
  private static final double MILLIS_PER_HOUR = 3.6e6;

  private final Firing firing;
  private final List<Reading> readings;
  private final JsonObject plan;
  private final PlannedCurve curve;
  private final ZoneId zone;

  /**
   * Takes a firing with its readings.
   *
   * @param firing the firing
   * @param readings its readings in order of time
   * @param zone where the kiln stands
   */
  public FiringLogText(Firing firing, List<Reading> readings, ZoneId zone) {
    this.firing = firing;
    this.readings = List.copyOf(readings);
    this.plan = JsonParser.parseString(firing.begun().plan()).getAsJsonObject();
    this.curve = PlannedCurve.of(plan);
    this.zone = zone;
  }

  /** Returns everything that is known of the firing. */
  public JsonObject json() {
    var one = new JsonObject();
    one.addProperty("id", firing.id());
    one.addProperty("name", firing.begun().name());
    one.addProperty("piece", firing.begun().piece().orElse(null));
    one.addProperty("started_at", local(firing.begun().startedAtMillis()));
    one.addProperty("ended", firing.endedAtMillis().isPresent());
    one.add("setup", JsonParser.parseString(firing.begun().setup()));
    one.add("plan", plan);
    one.add("outcome", JsonParser.parseString(firing.outcome()));
    var rows = new JsonArray();
    for (Reading reading : readings) {
      var row = new JsonObject();
      row.addProperty("at", local(reading.atMillis()));
      row.addProperty("after_h", rounded(hours(reading), 1000));
      if (reading.celsius().isPresent()) {
        row.addProperty("display_c", rounded(reading.celsius().getAsDouble(), 10));
      }
      row.addProperty("predicted_c", rounded(predicted(hours(reading)), 10));
      row.addProperty("note", reading.note());
      rows.add(row);
    }
    one.add("readings", rows);
    return one;
  }

  /** Returns the same as a text for other programs. */
  public String jsonText() {
    return new GsonBuilder().setPrettyPrinting().create().toJson(json());
  }

  /** Returns the readings as a table; texts that a spreadsheet would compute are defused. */
  public String csv() {
    var text = new StringBuilder("at,after_h,display_c,predicted_c,difference_k,note\r\n");
    for (Reading reading : readings) {
      double predicted = predicted(hours(reading));
      String shown = "";
      String difference = "";
      if (reading.celsius().isPresent()) {
        shown = number(reading.celsius().getAsDouble());
        difference = number(reading.celsius().getAsDouble() - predicted);
      }
      text.append(
          String.join(
              ",",
              local(reading.atMillis()),
              String.format(Locale.ROOT, "%.2f", hours(reading)),
              shown,
              number(predicted),
              difference,
              quoted(reading.note())));
      text.append("\r\n");
    }
    return text.toString();
  }

  private double hours(Reading reading) {
    return (reading.atMillis() - firing.begun().startedAtMillis()) / MILLIS_PER_HOUR;
  }

  private double predicted(double hours) {
    return curve.celsiusAt(hours);
  }

  private String local(long millis) {
    return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
        Instant.ofEpochMilli(millis).atZone(zone).withNano(0));
  }

  private static String number(double value) {
    return String.format(Locale.ROOT, "%.0f", value);
  }

  private static String quoted(String text) {
    boolean computed = !text.isEmpty() && "=+-@\t".indexOf(text.charAt(0)) >= 0;
    String plain = (computed ? "'" + text : text).replaceAll("[\\r\\n]+", " ");
    return '"' + plain.replace("\"", "\"\"") + '"';
  }

  private static double rounded(double value, double scale) {
    return Math.rint(value * scale) / scale;
  }
}
