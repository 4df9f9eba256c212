package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.text.Normalizer;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.OwnFigures;
import org.lehrcase.bench.store.OwnFiguresTable;
import org.lehrcase.bench.store.OwnFiguresTable.Entry;
import org.lehrcase.bench.store.OwnFiguresTable.Kind;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** My kilns, my glasses, and the block of a piece. Every answer was durable before it was sent. */
final class OwnFigureQuestions {
  private static final Pattern ID = Pattern.compile("[0-9a-f]{32}|last");
  private static final int MAX_NAME = 100;
  private static final int MAX_FIGURES = 8000;

  private final OwnFiguresTable table;

  OwnFigureQuestions(OwnFiguresTable table) {
    this.table = table;
  }

  void addTo(JsonApi api) {
    kind(api, "kilns", Kind.KILN);
    kind(api, "glasses", Kind.GLASS);
    api.onEach("GET blocks/*", (id, ask) -> block(id));
    api.onEach("PUT blocks/*", (id, ask) -> keep(Kind.BLOCK, checkedId(id), ask));
  }

  private void kind(JsonApi api, String name, Kind kind) {
    api.on("GET " + name, ask -> all(kind));
    api.on("POST " + name, ask -> keep(kind, UUID.randomUUID().toString().replace("-", ""), ask));
    api.onEach("PUT " + name + "/*", (id, ask) -> keep(kind, checkedId(id), ask));
    api.onEach("POST " + name + "/*/forget", (id, ask) -> forget(kind, id));
  }

  private JsonElement all(Kind kind) throws StoreException {
    var list = new JsonArray();
    for (Entry entry : table.all(kind)) {
      list.add(json(entry));
    }
    var answer = new JsonObject();
    answer.add("entries", list);
    return answer;
  }

  private JsonElement block(String id) throws Trouble, StoreException {
    Optional<Entry> entry = table.find(Kind.BLOCK, checkedId(id));
    return entry.isPresent() ? json(entry.get()) : new JsonObject();
  }

  private JsonElement keep(Kind kind, String id, Ask ask) throws Trouble, IOException {
    JsonObject body = ask.json();
    return KilnQuestions.inFields(() -> kept(kind, id, body));
  }

  private JsonElement kept(Kind kind, String id, JsonObject body)
      throws FieldTrouble, Trouble, StoreException {
    String name =
        body.has("name")
            ? Normalizer.normalize(Json.text(body, "name"), Normalizer.Form.NFC).strip()
            : "";
    if (kind != Kind.BLOCK && (name.isEmpty() || name.length() > MAX_NAME)) {
      throw new FieldTrouble("name", "give it a name of at most 100 letters");
    }
    if (!body.has("figures") || !body.get("figures").isJsonObject()) {
      throw new FieldTrouble("figures", "are missing");
    }
    JsonObject figures = body.getAsJsonObject("figures");
    switch (kind) {
      case KILN -> OwnFigures.checkKiln(figures);
      case GLASS -> OwnFigures.checkGlass(figures);
      case BLOCK -> {} // the page's own state; it is read again only by the page
    }
    if (figures.toString().length() > MAX_FIGURES) {
      throw new FieldTrouble("figures", "are longer than anybody would type");
    }
    Entry entry = new Entry(id, name, figures.toString());
    if (!table.keep(kind, entry)) {
      throw new Trouble(
          TroubleCode.TOO_LARGE,
          "There are " + OwnFiguresTable.MOST + " already.",
          "Forget one that you no longer use.");
    }
    return json(entry);
  }

  private JsonElement forget(Kind kind, String id) throws Trouble, StoreException {
    table.forget(kind, checkedId(id));
    return all(kind);
  }

  private static String checkedId(String id) throws Trouble {
    if (!ID.matcher(id).matches()) {
      throw new Trouble(TroubleCode.BAD_REQUEST, "This is no id.", "Load the page again.");
    }
    return id;
  }

  private static JsonObject json(Entry entry) {
    var one = new JsonObject();
    one.addProperty("id", entry.id());
    one.addProperty("name", entry.name());
    one.add("figures", com.google.gson.JsonParser.parseString(entry.figures()));
    return one;
  }
}
