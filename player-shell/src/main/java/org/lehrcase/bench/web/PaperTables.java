package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.OptionalDouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.MaterialsList;
import org.lehrcase.core.course.MaterialsRow;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.glass.CurvePoint;
import org.lehrcase.core.glass.FiringSchedule;
import org.lehrcase.core.glass.FiringSegment;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.table.PlainText;
import org.lehrcase.core.table.Problem;

/** Reads the tables of a lesson and answers them as rows and curves. */
final class PaperTables {
  private static final int MAX_TABLE_BYTES = 1 << 20;
  private static final double ROOM_C = 20;

  private final OpenedEdition edition;

  PaperTables(OpenedEdition edition) {
    this.edition = edition;
  }

  JsonArray firing(Lesson lesson) throws VaultException, IOException {
    JsonArray schedules = new JsonArray();
    for (Asset asset : here(lesson, AssetRole.FIRING_SCHEDULE)) {
      FiringSchedule schedule = FiringSchedule.parse(text(asset));
      JsonObject one = named(asset);
      one.addProperty("unit", schedule.unit() == TemperatureUnit.FAHRENHEIT ? "F" : "C");
      one.add("segments", segments(schedule));
      one.add("curve", curve(schedule));
      one.addProperty("hoursTotal", schedule.controllerHours(ROOM_C, KilnPace.ASSUMED));
      one.addProperty("estimate", schedule.isEstimate());
      one.add("problems", Json.tree(schedule.problems().stream().map(Problem::message).toList()));
      schedules.add(one);
    }
    return schedules;
  }

  private static JsonArray segments(FiringSchedule schedule) {
    JsonArray segments = new JsonArray();
    for (FiringSegment segment : schedule.segments()) {
      JsonObject one = new JsonObject();
      one.addProperty("name", segment.name());
      one.addProperty("rateCPerH", orNull(segment.rateCPerHour()));
      one.addProperty("targetC", orNull(segment.targetC()));
      one.addProperty("holdMin", segment.holdMinutes());
      one.addProperty("note", segment.note());
      segments.add(one);
    }
    return segments;
  }

  private static @org.jspecify.annotations.Nullable Double orNull(OptionalDouble value) {
    return value.isPresent() ? value.getAsDouble() : null;
  }

  private static JsonArray curve(FiringSchedule schedule) {
    JsonArray curve = new JsonArray();
    for (CurvePoint point : schedule.curve(ROOM_C)) {
      JsonArray pair = new JsonArray();
      pair.add(point.hours());
      pair.add(point.celsius());
      curve.add(pair);
    }
    return curve;
  }

  JsonArray materials(Lesson lesson) throws VaultException, IOException {
    JsonArray lists = new JsonArray();
    for (Asset asset : here(lesson, AssetRole.MATERIALS_LIST)) {
      JsonArray rows = new JsonArray();
      for (MaterialsRow row : MaterialsList.parse(text(asset)).rows()) {
        JsonObject one = new JsonObject();
        one.addProperty("item", row.item());
        one.addProperty("amount", row.amount().orElse(null));
        one.addProperty("unit", row.unit());
        one.addProperty("per", row.per().word());
        one.addProperty("itemNo", row.itemNo());
        one.addProperty("where", row.where());
        one.addProperty("note", row.note());
        rows.add(one);
      }
      JsonObject list = named(asset);
      list.add("rows", rows);
      lists.add(list);
    }
    return lists;
  }

  private List<Asset> here(Lesson lesson, AssetRole role) {
    Iterator<Asset> assets = lesson.assets(role).filter(edition::isHere).iterator();
    java.util.ArrayList<Asset> list = new java.util.ArrayList<>();
    assets.forEachRemaining(list::add);
    return list;
  }

  private String text(Asset asset) throws VaultException, IOException {
    return PlainText.decode(edition.read(asset, MAX_TABLE_BYTES));
  }

  private static JsonObject named(Asset asset) {
    JsonObject one = new JsonObject();
    one.addProperty("asset", asset.id().hex());
    one.addProperty("name", asset.name());
    return one;
  }
}
