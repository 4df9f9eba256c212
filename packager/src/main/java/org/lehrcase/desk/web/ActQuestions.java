package org.lehrcase.desk.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Json;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.keeping.BookKeeping;
import org.lehrcase.desk.sales.Event;

/** Acts on what was sold; each answers with its event, by which it can be taken back. */
final class ActQuestions {
  private static final int MAX_PLACES = 99;

  private final OpenDesk desk;
  private final BookKeeping keeping;

  ActQuestions(OpenDesk desk) {
    this.desk = desk;
    this.keeping = new BookKeeping(desk.book());
  }

  /** One act on a license. */
  @FunctionalInterface
  private interface Act {
    Event on(LicenseId license, JsonObject body) throws Trouble, IOException, RefusedException;
  }

  void addTo(JsonApi api) {
    act(api, "block", (id, body) -> keeping.block(id));
    act(api, "unblock", (id, body) -> keeping.unblock(id));
    act(api, "refund", (id, body) -> keeping.refund(id));
    act(
        api,
        "places",
        (id, body) -> keeping.places(id, Answers.number(body, "places", 1, MAX_PLACES)));
    api.onEach(
        "POST licenses/*/sent",
        desk.keyedEach(
            (id, ask, keys) -> {
              ask.json();
              keeping.sent(Answers.license(id));
              return new JsonObject();
            }));
    api.onEach(
        "POST people/*/rename",
        desk.keyedEach(
            (id, ask, keys) -> {
              JsonObject body = ask.json();
              return event(keeping.rename(id, Json.text(body, "name"), Json.text(body, "email")));
            }));
    api.onEach(
        "POST people/*/erase",
        desk.keyedEach(
            (id, ask, keys) -> {
              ask.json();
              keeping.erase(id);
              return new JsonObject();
            }));
    api.onEach(
        "POST acts/*/undo",
        desk.keyedEach(
            (id, ask, keys) -> {
              ask.json();
              return event(keeping.undo(seq(id)));
            }));
  }

  private void act(JsonApi api, String name, Act act) {
    api.onEach(
        "POST licenses/*/" + name,
        desk.keyedEach((id, ask, keys) -> event(act.on(Answers.license(id), ask.json()))));
  }

  private static JsonElement event(Event event) {
    JsonObject answer = new JsonObject();
    answer.addProperty("seq", event.seq());
    answer.addProperty("kind", event.kind());
    answer.addProperty("detail", event.detail());
    return answer;
  }

  private static long seq(String text) throws Trouble {
    if (!text.matches("\\d{1,15}")) {
      throw new Trouble(TroubleCode.BAD_REQUEST, "This is no event.", "Load the page again.");
    }
    return Long.parseLong(text);
  }
}
