package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.kilns.MadePapers;
import org.lehrcase.bench.plans.PlanFile;
import org.lehrcase.bench.plans.PlanShape;
import org.lehrcase.bench.store.OwnPictureTable.Picture;
import org.lehrcase.bench.store.PlanTable;
import org.lehrcase.bench.store.PlanTable.Plan;
import org.lehrcase.bench.store.PlanTable.Version;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** The student's plans of sheets. Every answer was durable before it was sent. */
final class PlanQuestions {
  private static final int ID_BYTES = 16;

  private final StudyStore store;
  private final PlanTable plans;
  private final MadePapers papers;

  PlanQuestions(StudyStore store, MadePapers papers) {
    this.store = store;
    this.plans = store.plans();
    this.papers = papers;
  }

  void addTo(JsonApi api) {
    api.on("GET plans", ask -> all());
    api.on("POST plans", ask -> KilnQuestions.inFields(() -> begin(planOf(body(ask)))));
    api.on("POST plans/import", ask -> KilnQuestions.inFields(() -> bringIn(ask)));
    api.onEach("GET plans/*", (id, ask) -> answer(find(id)));
    api.onEach("PUT plans/*", (id, ask) -> KilnQuestions.inFields(() -> keep(find(id), body(ask))));
    api.onEach(
        "POST plans/*/duplicate",
        (id, ask) -> KilnQuestions.inFields(() -> begin(named(find(id), " (copy)"))));
    api.onEach("POST plans/*/version", (id, ask) -> putAside(find(id)));
    api.onEach("GET plans/*/versions", (id, ask) -> versions(find(id)));
    api.onEach("POST plans/*/restore", (id, ask) -> restore(find(id), ask.json()));
    api.onEach("POST plans/*/forget", (id, ask) -> forget(find(id)));
    api.onEach("POST plans/*/file", (id, ask) -> file(find(id)));
    api.onEach("POST plans/*/course", (id, ask) -> course(find(id)));
  }

  private static JsonObject body(Ask ask) throws Trouble, IOException {
    return ask.json(PlanShape.MOST_BYTES + (1 << 10));
  }

  private static JsonObject planOf(JsonObject body) throws FieldTrouble {
    if (!body.has("plan") || !body.get("plan").isJsonObject()) {
      throw new FieldTrouble("plan", "is missing");
    }
    return body.getAsJsonObject("plan");
  }

  private JsonElement all() throws StoreException {
    var list = new JsonArray();
    for (Plan plan : plans.all()) {
      JsonObject body = JsonParser.parseString(plan.body()).getAsJsonObject();
      var one = new JsonObject();
      one.addProperty("id", plan.id());
      one.addProperty("name", plan.name());
      one.addProperty("changed_at_millis", plan.changedAtMillis());
      one.add("sheets", body.get("sheets"));
      one.addProperty(
          "subjects", body.has("subjects") ? body.getAsJsonArray("subjects").size() : 0);
      if (body.has("picture")) {
        one.add("picture", body.getAsJsonObject("picture").get("id"));
      }
      list.add(one);
    }
    var answer = new JsonObject();
    answer.add("plans", list);
    return answer;
  }

  private JsonElement begin(JsonObject plan) throws FieldTrouble, Trouble, StoreException {
    String name = PlanShape.check(plan);
    plan.addProperty("name", name);
    return answer(find(plans.begin(name, plan.toString()).orElseThrow(PlanQuestions::full)));
  }

  private JsonElement keep(Plan standing, JsonObject body)
      throws FieldTrouble, Trouble, StoreException {
    JsonObject plan = planOf(body);
    String name = PlanShape.check(plan);
    long revision = (long) Json.number(body, "revision");
    Plan kept =
        plans
            .keep(new Plan(standing.id(), name, plan.toString(), revision, 0))
            .orElseThrow(PlanQuestions::elsewhere);
    var answer = new JsonObject();
    answer.addProperty("revision", kept.revision());
    answer.addProperty("changed_at_millis", kept.changedAtMillis());
    return answer;
  }

  private static JsonObject named(Plan plan, String more) {
    JsonObject copy = JsonParser.parseString(plan.body()).getAsJsonObject();
    String name = plan.name();
    copy.addProperty("name", name.substring(0, Math.min(name.length(), 90)) + more);
    return copy;
  }

  private JsonElement putAside(Plan plan) throws StoreException {
    plans.putAside(plan);
    return versions(plan);
  }

  private JsonElement versions(Plan plan) throws StoreException {
    var list = new JsonArray();
    for (Version version : plans.versions(plan.id())) {
      JsonObject body = JsonParser.parseString(version.body()).getAsJsonObject();
      var one = new JsonObject();
      one.addProperty("number", version.number());
      one.addProperty("at_millis", version.atMillis());
      one.addProperty(
          "subjects", body.has("subjects") ? body.getAsJsonArray("subjects").size() : 0);
      list.add(one);
    }
    var answer = new JsonObject();
    answer.add("versions", list);
    return answer;
  }

  /** What stands is put aside first, so that going back can be gone back on. */
  private JsonElement restore(Plan plan, JsonObject body) throws Trouble, StoreException {
    int number = (int) Json.number(body, "number");
    for (Version version : plans.versions(plan.id())) {
      if (version.number() == number) {
        JsonObject old = JsonParser.parseString(version.body()).getAsJsonObject();
        String name = old.has("name") ? old.get("name").getAsString() : plan.name();
        return store.inTransaction(
            () -> {
              plans.putAside(plan);
              plans.keep(new Plan(plan.id(), name, version.body(), plan.revision(), 0));
              return answer(plans.find(plan.id()).orElse(plan));
            });
      }
    }
    throw gone();
  }

  private JsonElement forget(Plan plan) throws StoreException {
    plans.forget(plan.id());
    return new JsonObject();
  }

  private JsonElement file(Plan plan) throws Trouble, StoreException {
    JsonObject body = JsonParser.parseString(plan.body()).getAsJsonObject();
    Optional<byte[]> jpeg = Optional.empty();
    if (body.has("picture")) {
      jpeg = store.ownPictures().jpeg(body.getAsJsonObject("picture").get("id").getAsString());
    }
    return made(PlanFile.fileName(plan.name(), ".plan.json"), PlanFile.write(body, jpeg));
  }

  private JsonElement course(Plan plan) {
    JsonObject body = JsonParser.parseString(plan.body()).getAsJsonObject();
    return made(PlanFile.fileName(plan.name(), ".layers.yaml"), PlanFile.forCourse(body));
  }

  private JsonElement made(String name, byte[] bytes) {
    var made = new MadePapers.Made(name, "application/octet-stream", bytes);
    return KilnPapers.address(papers.keep(made));
  }

  /** The picture of a file is as foreign as any other and is made clean again. */
  private JsonElement bringIn(Ask ask) throws FieldTrouble, Trouble, IOException {
    PlanFile file = PlanFile.read(ask.file(PlanFile.MOST_BYTES));
    JsonObject plan = file.plan().deepCopy();
    if (plan.has("picture") && file.picture().isEmpty()) {
      plan.remove("picture");
    }
    PlanShape.check(plan);
    if (file.picture().isPresent() && plan.has("picture")) {
      Picture picture =
          PictureQuestions.keep(store, new ByteArrayInputStream(file.picture().get()));
      plan.getAsJsonObject("picture").addProperty("id", picture.id());
    }
    return begin(plan);
  }

  private static JsonObject answer(Plan plan) {
    var answer = new JsonObject();
    answer.addProperty("id", plan.id());
    answer.addProperty("name", plan.name());
    answer.addProperty("changed_at_millis", plan.changedAtMillis());
    answer.addProperty("revision", plan.revision());
    answer.add("plan", JsonParser.parseString(plan.body()));
    return answer;
  }

  private Plan find(String id) throws Trouble, StoreException {
    return plans.find(StudyQuestions.hex(id, ID_BYTES)).orElseThrow(PlanQuestions::gone);
  }

  private static Trouble gone() {
    return new Trouble(TroubleCode.NOT_FOUND, "There is no such plan.", "Load the page again.");
  }

  private static Trouble full() {
    return new Trouble(
        TroubleCode.TOO_LARGE,
        "There are 300 plans already.",
        "Save one that is done as a file and throw it away here.");
  }

  private static Trouble elsewhere() {
    return new Trouble(
        TroubleCode.REFUSED,
        "This plan was changed in another window since this one read it.",
        "Both are safe: what you drew here is still on this page.",
        "Save it as a copy, or load the page again for the other one.");
  }
}
