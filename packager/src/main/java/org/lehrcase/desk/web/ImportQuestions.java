package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.Json;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.id.Octets;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.keeping.ShopColumns;
import org.lehrcase.desk.keeping.ShopTable;

/** A shop's table: read, matched, looked through, and only then entered. */
final class ImportQuestions {
  private static final int MAX_MOVES = 23;
  private static final int ROWS_SHOWN = 200;

  private final OpenDesk desk;
  private final Map<String, ShopTable> tables = new ConcurrentHashMap<>();

  ImportQuestions(OpenDesk desk) {
    this.desk = desk;
  }

  void addTo(JsonApi api) {
    api.on("POST import", desk.keyed((ask, keys) -> read(ask)));
    api.onEach("POST import/*/look", desk.keyedEach((id, ask, keys) -> look(id, ask)));
    api.onEach("POST import/*/enter", desk.keyedEach(this::enter));
  }

  private JsonElement read(Ask ask) throws Trouble, IOException {
    ShopTable table = new ShopTable(desk.book(), ask.file());
    tables.clear(); // one at a time is enough, and the last is the one that is meant
    String id = Octets.random(desk.random(), 8).hex();
    tables.put(id, table);
    JsonObject answer = new JsonObject();
    answer.addProperty("id", id);
    answer.add("columns", Json.tree(table.columns()));
    answer.add("problems", Json.tree(table.problems()));
    answer.add("guess", Json.tree(ShopColumns.guess(table.columns())));
    return answer;
  }

  private JsonElement look(String id, Ask ask) throws Trouble, IOException {
    List<ShopTable.Row> rows = table(id).look(wish(ask.json()));
    JsonObject answer = new JsonObject();
    for (ShopTable.Verdict verdict : ShopTable.Verdict.values()) {
      answer.addProperty(
          verdict.name().toLowerCase(Locale.ROOT),
          rows.stream().filter(row -> row.verdict() == verdict).count());
    }
    JsonArray shown = new JsonArray();
    rows.stream()
        .sorted((a, b) -> b.verdict().compareTo(a.verdict())) // what needs an eye comes first
        .limit(ROWS_SHOWN)
        .forEach(row -> shown.add(row(row)));
    answer.add("rows", shown);
    return answer;
  }

  private static JsonObject row(ShopTable.Row row) {
    JsonObject one = new JsonObject();
    one.addProperty("line", row.line());
    one.addProperty("verdict", row.verdict().name().toLowerCase(Locale.ROOT));
    one.addProperty("why", row.why());
    one.addProperty("name", row.order().map(o -> o.name()).orElse(""));
    one.addProperty("email", row.order().map(o -> o.email()).orElse(""));
    one.addProperty("series", row.order().map(o -> String.join(", ", o.series())).orElse(""));
    return one;
  }

  private JsonElement enter(String id, Ask ask, DeskKeys keys)
      throws Trouble, IOException, RefusedException {
    JsonObject answer = new JsonObject();
    answer.addProperty("entered", table(id).enter(wish(ask.json()), desk.licensing(keys)));
    tables.remove(id);
    return answer;
  }

  private ShopTable table(String id) throws Trouble {
    ShopTable table = tables.get(id);
    if (table == null) {
      throw new Trouble(
          TroubleCode.NOT_FOUND, "The table is not here any more.", "Choose the file once more.");
    }
    return table;
  }

  private static ShopTable.Wish wish(JsonObject body) throws Trouble {
    List<String> facts = new ArrayList<>();
    if (body.has("facts") && body.get("facts").isJsonArray()) {
      for (JsonElement one : body.getAsJsonArray("facts")) {
        facts.add(one.getAsString());
      }
    }
    ShopColumns columns =
        new ShopColumns(
            Answers.optional(body, "name"),
            Answers.optional(body, "last"),
            Answers.optional(body, "email"),
            Answers.optional(body, "product"),
            Answers.optional(body, "places"),
            facts);
    return new ShopTable.Wish(
        columns, Answers.optional(body, "series"), Answers.number(body, "moves", 0, MAX_MOVES));
  }
}
