package org.lehrcase.bench.kilns;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.store.FiringLogTable;
import org.lehrcase.bench.store.FiringLogTable.Reading;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.table.PlainText;
import org.lehrcase.core.table.TableRow;
import org.lehrcase.core.table.TextTable;

/**
 * Readings that another program has written: a table with a header row, or JSON, as the log writes
 * them itself. Columns are {@code at} or {@code after_h}; {@code display_c} or {@code display_f};
 * {@code note}. A wrong row refuses the whole file, by its line.
 */
public final class ReadingsFile {
  private static final double MILLIS_PER_HOUR = 3.6e6;
  private static final double COLDEST_C = -30;
  private static final double HOTTEST_C = 1400;
  private static final double LONGEST_HOURS = 1000;
  private static final int MOST_NOTE = 500;
  private static final String COLUMNS =
      "needs a header row with at or after_h, display_c or display_f, and note if you like";

  private final long startedAtMillis;
  private final ZoneId zone;

  /**
   * Reads files of one firing.
   *
   * @param startedAtMillis when it began, UTC
   * @param zone where the kiln stands
   */
  public ReadingsFile(long startedAtMillis, ZoneId zone) {
    this.startedAtMillis = startedAtMillis;
    this.zone = zone;
  }

  /**
   * Reads a file.
   *
   * @param bytes the file, in any of the encodings that spreadsheets write
   * @return its readings, at least one
   * @throws FieldTrouble naming the row that cannot be used
   */
  public List<Reading> read(byte[] bytes) throws FieldTrouble {
    String text = PlainText.normalised(PlainText.decode(bytes)).replace("\uFEFF", "").strip();
    List<Reading> readings =
        text.startsWith("{") || text.startsWith("[") ? json(text) : table(text);
    if (readings.isEmpty()) {
      throw new FieldTrouble("file", "has no reading; it " + COLUMNS);
    }
    if (readings.size() > FiringLogTable.MOST_READINGS) {
      throw new FieldTrouble(
          "file", "has more than " + FiringLogTable.MOST_READINGS + " readings; leave some out");
    }
    return readings;
  }

  private List<Reading> table(String text) throws FieldTrouble {
    TextTable table = TextTable.parse(text);
    boolean time = table.has("at") || table.has("after_h");
    boolean display = table.has("display_c") || table.has("display_f") || table.has("note");
    if (!time || !display) {
      throw new FieldTrouble("file", COLUMNS);
    }
    if (!table.problems().isEmpty()) {
      throw new FieldTrouble(
          "file line " + table.problems().get(0).line(), table.problems().get(0).message());
    }
    List<Reading> readings = new ArrayList<>();
    for (TableRow row : table.rows()) {
      readings.add(reading(row::text, "file line " + row.line()));
    }
    return readings;
  }

  private List<Reading> json(String text) throws FieldTrouble {
    List<Reading> readings = new ArrayList<>();
    try {
      JsonElement whole = JsonParser.parseString(text);
      JsonElement rows = whole.isJsonObject() ? whole.getAsJsonObject().get("readings") : whole;
      if (rows == null || !rows.isJsonArray()) {
        throw new FieldTrouble("file", "has no list of readings");
      }
      for (JsonElement row : rows.getAsJsonArray()) {
        JsonObject fields = row.getAsJsonObject();
        Map<String, JsonElement> named = fields.asMap();
        readings.add(
            reading(
                name -> named.containsKey(name) ? textOf(named.get(name)) : "",
                "reading " + (readings.size() + 1)));
      }
    } catch (JsonParseException | IllegalStateException | UnsupportedOperationException e) {
      throw new FieldTrouble("file", "is no JSON that can be read");
    }
    return readings;
  }

  private static String textOf(JsonElement value) {
    return value.isJsonNull() ? "" : value.getAsString();
  }

  private Reading reading(Function<String, String> cell, String where) throws FieldTrouble {
    OptionalDouble celsius = celsius(cell, where);
    String note = cell.apply("note");
    if (note.length() > MOST_NOTE) {
      throw new FieldTrouble(where, "has a note of more than " + MOST_NOTE + " letters");
    }
    if (celsius.isEmpty() && note.isBlank()) {
      throw new FieldTrouble(where, "has neither a temperature nor a note");
    }
    return new Reading(millis(cell, where), celsius, note.strip());
  }

  private static OptionalDouble celsius(Function<String, String> cell, String where)
      throws FieldTrouble {
    boolean fahrenheit = cell.apply("display_c").isBlank();
    String written = cell.apply(fahrenheit ? "display_f" : "display_c");
    if (written.isBlank()) {
      return OptionalDouble.empty();
    }
    double shown = number(written, where);
    double celsius = fahrenheit ? TemperatureUnit.FAHRENHEIT.toCelsius(shown) : shown;
    if (!(celsius >= COLDEST_C && celsius <= HOTTEST_C)) {
      throw new FieldTrouble(where, "has a temperature that no kiln shows: " + written);
    }
    return OptionalDouble.of(celsius);
  }

  private static double number(String written, String where) throws FieldTrouble {
    return TableRow.numberOf(written)
        .orElseThrow(
            () -> new FieldTrouble(where, "has no number where one must stand: " + shown(written)))
        .doubleValue();
  }

  private static String shown(String written) {
    return written.length() > 30 ? written.substring(0, 30) + "…" : written;
  }

  private long millis(Function<String, String> cell, String where) throws FieldTrouble {
    String at = cell.apply("at").strip();
    if (!at.isEmpty()) {
      return moment(at)
          .orElseThrow(
              () ->
                  new FieldTrouble(
                      where, "needs a day and a time such as 2026-03-01 08:00, not " + shown(at)));
    }
    double hours = number(cell.apply("after_h"), where);
    if (!(hours >= 0 && hours <= LONGEST_HOURS)) {
      throw new FieldTrouble(where, "lies outside of any firing: " + hours + " h after the start");
    }
    return startedAtMillis + Math.round(hours * MILLIS_PER_HOUR);
  }

  private Optional<Long> moment(String at) {
    String iso = at.replace(' ', 'T');
    try {
      return Optional.of(OffsetDateTime.parse(iso).toInstant().toEpochMilli());
    } catch (DateTimeException offsetMissing) {
      try {
        return Optional.of(LocalDateTime.parse(iso).atZone(zone).toInstant().toEpochMilli());
      } catch (DateTimeException noMoment) {
        return Optional.empty();
      }
    }
  }
}
