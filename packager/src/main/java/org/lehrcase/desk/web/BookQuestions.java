package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.desk.keeping.YearTable;
import org.lehrcase.desk.sales.Event;
import org.lehrcase.desk.sales.Events;

/** The sales book: its events, and the table of a year. */
final class BookQuestions {
  private static final int MOST_EVENTS = 500;

  private final OpenDesk desk;

  BookQuestions(OpenDesk desk) {
    this.desk = desk;
  }

  void addTo(JsonApi api) {
    api.on("GET book", desk.keyed((ask, keys) -> events(ask)));
    api.on("GET year", desk.keyed((ask, keys) -> year(ask.query("y"))));
  }

  private JsonElement events(Ask ask) throws Trouble, IOException {
    String year = ask.query("y");
    boolean all = year.isEmpty();
    Events.Filter filter =
        new Events.Filter(
            ask.query("kind"),
            all ? "" : yearOf(year) + "-01-01",
            all ? "9" : yearOf(year) + 1 + "-01-01",
            MOST_EVENTS);
    JsonArray events = new JsonArray();
    for (Event event : desk.book().events().some(filter)) {
      JsonObject one = new JsonObject();
      one.addProperty("seq", event.seq());
      one.addProperty("at", event.at().toString());
      one.addProperty("kind", event.kind());
      one.addProperty("who", who(event.subject()));
      one.addProperty("subject", event.subject());
      one.addProperty("detail", event.detail());
      events.add(one);
    }
    JsonObject answer = new JsonObject();
    answer.add("events", events);
    answer.addProperty("most", MOST_EVENTS);
    return answer;
  }

  private String who(String subject) throws IOException {
    if (subject.length() == 2 * LicenseId.BYTES) {
      return desk.book()
          .licenses()
          .byId(LicenseId.ofHex(subject))
          .map(entry -> entry.person().name())
          .orElse("");
    }
    return desk.book().people().byId(subject).map(person -> person.name()).orElse("");
  }

  private JsonElement year(String text) throws Trouble, IOException {
    JsonObject answer = new JsonObject();
    answer.addProperty("text", new YearTable(desk.book()).of(yearOf(text)));
    answer.addProperty("fileName", "sales " + yearOf(text) + ".csv");
    return answer;
  }

  private static int yearOf(String text) throws Trouble {
    if (!text.matches("[12]\\d{3}")) {
      throw new Trouble(TroubleCode.BAD_REQUEST, "This is no year.", "Choose a year.");
    }
    return Integer.parseInt(text);
  }
}
