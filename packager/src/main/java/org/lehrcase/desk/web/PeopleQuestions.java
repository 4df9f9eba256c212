package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.Json;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.desk.answering.LicenseSearch;
import org.lehrcase.desk.answering.Mail;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.Actions;
import org.lehrcase.desk.sales.LicenseEntry;
import org.lehrcase.desk.sales.Person;

/** People: searched, added, licensed. */
final class PeopleQuestions {
  private static final int MAX_PLACES = 99;
  private static final int MAX_MOVES = 23;

  private final OpenDesk desk;

  PeopleQuestions(OpenDesk desk) {
    this.desk = desk;
  }

  void addTo(JsonApi api) {
    api.on("GET people", desk.keyed((ask, keys) -> search(ask.query("q"))));
    api.on("GET person", desk.keyed((ask, keys) -> person(ask.query("id"))));
    api.on("POST people", desk.keyed(this::sell));
    api.onEach("POST licenses/*/issue", desk.keyedEach(this::issue));
  }

  private JsonElement search(String typed) throws IOException {
    JsonArray people = new JsonArray();
    for (Person person : desk.book().people().search(typed)) {
      people.add(shape(person));
    }
    JsonObject answer = new JsonObject();
    answer.add("people", people);
    answer.addProperty("count", desk.book().people().count());
    return answer;
  }

  private JsonObject shape(Person person) throws IOException {
    JsonObject one = new JsonObject();
    one.addProperty("id", person.id());
    one.addProperty("name", person.name());
    one.addProperty("email", person.email());
    one.addProperty("since", person.since().toString());
    JsonArray licenses = new JsonArray();
    for (LicenseEntry license : desk.book().licenses().of(person.id())) {
      licenses.add(Answers.license(desk.book(), license));
    }
    one.add("licenses", licenses);
    return one;
  }

  private JsonElement person(String id) throws Trouble, IOException {
    Person person =
        desk.book()
            .people()
            .byId(id)
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_FOUND, "There is no such person.", "Search again."));
    JsonObject one = shape(person);
    JsonArray acts = new JsonArray();
    for (LicenseEntry license : desk.book().licenses().of(id)) {
      List<Actions.Action> all = desk.book().actions().of(license.id());
      all.stream()
          .filter(act -> act.state() != Actions.State.UNDONE)
          .findFirst()
          .filter(act -> act.state() == Actions.State.OPEN)
          .ifPresent(act -> acts.add(act(act)));
    }
    one.add("acts", acts);
    return one;
  }

  private static JsonObject act(Actions.Action act) {
    JsonObject one = new JsonObject();
    one.addProperty("seq", act.seq());
    one.addProperty("license", act.license().hex());
    one.addProperty("kind", act.kind());
    return one;
  }

  private JsonElement sell(Ask ask, DeskKeys keys) throws Trouble, IOException, RefusedException {
    JsonObject body = ask.json();
    Allowance allowance =
        new Allowance(
            Answers.number(body, "places", 1, MAX_PLACES),
            Answers.number(body, "moves", 0, MAX_MOVES));
    Order order =
        Order.typed(
            Json.text(body, "name"),
            Json.text(body, "email"),
            Json.text(body, "series"),
            allowance);
    boolean gift = Answers.optional(body, "gift").equals("true");
    License license = desk.licensing(keys).sell(order, gift, facts(body));
    return sold(license);
  }

  private static Map<String, String> facts(JsonObject body) {
    Map<String, String> facts = new LinkedHashMap<>();
    if (body.has("facts") && body.get("facts").isJsonObject()) {
      for (Map.Entry<String, JsonElement> fact : body.getAsJsonObject("facts").entrySet()) {
        if (fact.getValue().isJsonPrimitive() && !fact.getValue().getAsString().isBlank()) {
          facts.put(fact.getKey(), fact.getValue().getAsString());
        }
      }
    }
    return facts;
  }

  /** Writes a license anew; with a series it covers that too. */
  private JsonElement issue(String id, Ask ask, DeskKeys keys)
      throws Trouble, IOException, RefusedException {
    String more = Answers.optional(ask.json(), "series");
    List<String> series = more.isEmpty() ? List.of() : Order.series(more);
    return sold(desk.licensing(keys).extend(Answers.license(id), series));
  }

  private JsonElement sold(License license) throws IOException, RefusedException {
    LicenseEntry entry = new LicenseSearch(desk.book()).open(license.id());
    JsonObject answer = new JsonObject();
    answer.add("license", Answers.license(desk.book(), entry));
    answer.addProperty("person", entry.person().id());
    answer.add("mail", Answers.mail(Mail.license(entry, license, desk.shop())));
    return answer;
  }
}
