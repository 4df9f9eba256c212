package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.desk.closing.Closing;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.EditionEntry;

/** The rehearsal of the closing; the closing itself is a command, and no button. */
final class ClosingQuestions {
  private final OpenDesk desk;

  ClosingQuestions(OpenDesk desk) {
    this.desk = desk;
  }

  void addTo(JsonApi api) {
    api.on(
        "POST closing/rehearse",
        desk.keyed(
            (ask, keys) -> {
              ask.json();
              return rehearse(keys);
            }));
  }

  private JsonElement rehearse(DeskKeys keys) throws IOException {
    List<Path> there =
        desk.book().editions().all().stream()
            .map(EditionEntry::folder)
            .map(Path::of)
            .filter(Files::isDirectory)
            .toList();
    JsonArray editions = new JsonArray();
    for (Closing.Rehearsed found : new Closing(desk.home(), keys).rehearse(there)) {
      JsonObject one = new JsonObject();
      one.addProperty("folder", found.folder().toString());
      one.addProperty("title", found.title());
      one.addProperty("lessons", found.lessons());
      one.addProperty("opens", found.opens());
      one.addProperty("trouble", found.trouble());
      editions.add(one);
    }
    JsonObject answer = new JsonObject();
    answer.add("editions", editions);
    return answer;
  }
}
