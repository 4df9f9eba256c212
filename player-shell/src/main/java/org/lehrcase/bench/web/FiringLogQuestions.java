package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.kilns.FiringLogText;
import org.lehrcase.bench.kilns.KilnSheet;
import org.lehrcase.bench.kilns.LogLearning;
import org.lehrcase.bench.kilns.MadePapers;
import org.lehrcase.bench.kilns.MeterBook;
import org.lehrcase.bench.kilns.ReadingsFile;
import org.lehrcase.bench.store.FiringLogTable.Begun;
import org.lehrcase.bench.store.FiringLogTable.Firing;
import org.lehrcase.bench.store.FiringLogTable.Reading;
import org.lehrcase.bench.store.FiringPhotoTable;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** The log of firings. Every answer was durable before it was sent. */
final class FiringLogQuestions {
  private static final int ID_BYTES = 16;
  private static final int MAX_NOTE = 500;
  private static final int MAX_OUTCOME = 6000;
  private static final double MOST_KWH = 1e8;

  private final StudyStore store;
  private final MadePapers papers;
  private final Clock clock;

  FiringLogQuestions(StudyStore store, MadePapers papers, Clock clock) {
    this.store = store;
    this.papers = papers;
    this.clock = clock;
  }

  void addTo(JsonApi api) {
    api.on("GET firings", ask -> all());
    api.on("POST firings", ask -> KilnQuestions.inFields(() -> begin(ask.json())));
    api.onEach("GET firings/*", (id, ask) -> answer(firing(id)));
    api.onEach("PUT firings/*", (id, ask) -> end(firing(id), ask));
    api.onEach(
        "POST firings/*/reading",
        (id, ask) -> KilnQuestions.inFields(() -> read(firing(id), ask.json())));
    api.onEach(
        "POST firings/*/readings",
        (id, ask) -> KilnQuestions.inFields(() -> readFile(firing(id), ask.file())));
    api.onEach("POST firings/*/photo", (id, ask) -> photo(firing(id), ask));
    api.onEach("POST firings/*/paper", (id, ask) -> paper(firing(id), ask));
    api.onEach("POST firings/*/fit", (id, ask) -> fit(firing(id)));
  }

  private JsonElement all() throws StoreException {
    var list = new JsonArray();
    for (Firing firing : store.firings().all()) {
      JsonObject one = text(firing).json();
      one.remove("plan");
      one.remove("setup");
      list.add(one);
    }
    var answer = new JsonObject();
    answer.add("firings", list);
    return answer;
  }

  /** The plan is computed here once more, so that what is kept is what the program says. */
  private JsonElement begin(JsonObject body) throws FieldTrouble, Trouble, StoreException {
    var fields = new Fields(body, "");
    String name = fields.text("name").filter(n -> !n.isBlank()).orElse("Firing");
    if (fields.object("request").isEmpty() || fields.object("setup").isEmpty()) {
      throw new FieldTrouble("request", "is missing: plan a firing first");
    }
    JsonObject request = body.getAsJsonObject("request").deepCopy();
    request.remove("other");
    var plan = new JsonObject();
    plan.add("request", request);
    plan.add("answer", KilnSheet.of(request, clock).json());
    Optional<String> piece = Optional.empty();
    if (fields.text("piece").isPresent()) {
      String id = StudyQuestions.hex(fields.text("piece").get(), ID_BYTES);
      piece = store.pieces().find(id).map(found -> id);
    }
    var begun =
        new Begun(
            name.strip(),
            piece,
            body.getAsJsonObject("setup").toString(),
            plan.toString(),
            moment(fields, "started_at"));
    String id = store.firings().begin(begun).orElseThrow(FiringLogQuestions::full);
    return answer(firing(id));
  }

  private long moment(Fields fields, String name) throws FieldTrouble {
    Optional<String> at = fields.text(name);
    if (at.isEmpty() || at.get().isBlank()) {
      return clock.millis();
    }
    try {
      return LocalDateTime.parse(at.get()).atZone(clock.getZone()).toInstant().toEpochMilli();
    } catch (DateTimeException e) {
      throw new FieldTrouble(name, "must be a day and a time, such as 2026-03-01T08:00");
    }
  }

  private JsonElement read(Firing firing, JsonObject body)
      throws FieldTrouble, Trouble, StoreException {
    var fields = new Fields(body, "");
    OptionalDouble celsius =
        fields.has("celsius")
            ? OptionalDouble.of(fields.number("celsius", 0, -30, 1400))
            : OptionalDouble.empty();
    String note = body.has("note") ? Json.text(body, "note").strip() : "";
    if (note.length() > MAX_NOTE) {
      throw new FieldTrouble("note", "must have at most " + MAX_NOTE + " letters");
    }
    boolean metered = fields.has("meter_kwh");
    if (celsius.isEmpty() && note.isEmpty() && !metered) {
      throw new FieldTrouble(
          "celsius", "is missing: write what the display shows, what the meter shows, or a note");
    }
    long at = moment(fields, "at");
    if (metered) {
      double shown = fields.number("meter_kwh", 0, 0, MOST_KWH);
      store.firings().note(firing.id(), MeterBook.of(firing).with(at, shown));
    }
    if (celsius.isPresent() || !note.isEmpty()) {
      keep(firing, List.of(new Reading(at, celsius, note)));
    }
    return answer(firing(firing.id()));
  }

  /** All readings of a file, or none of them. */
  private JsonElement readFile(Firing firing, byte[] file)
      throws FieldTrouble, Trouble, StoreException {
    var reader = new ReadingsFile(firing.begun().startedAtMillis(), clock.getZone());
    keep(firing, reader.read(file));
    return answer(firing);
  }

  private void keep(Firing firing, List<Reading> readings) throws Trouble, StoreException {
    if (!store.firings().add(firing.id(), readings)) {
      throw full();
    }
  }

  private JsonElement end(Firing firing, Ask ask) throws Trouble, IOException {
    JsonObject body = ask.json();
    JsonElement outcome = body.get("outcome");
    if (outcome == null || !outcome.isJsonObject() || outcome.toString().length() > MAX_OUTCOME) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST,
          "This is too long for the log, or nothing.",
          "The firing is as it was before.",
          "Write less.");
    }
    store.firings().end(firing.id(), outcome.toString());
    return answer(firing(firing.id()));
  }

  private JsonElement photo(Firing firing, Ask ask) throws Trouble, IOException {
    byte[] picture = ask.file();
    String type =
        PictureType.of(picture)
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.UNKNOWN_FILE,
                        "This is no picture that the page can show.",
                        "Choose a JPEG, PNG or WebP file."));
    byte[] plain =
        PlainPicture.of(picture)
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.UNKNOWN_FILE,
                        "This picture is damaged or not whole.",
                        "Choose it again, or save it anew with a program for pictures."));
    if (!store.firingPhotos().add(firing.id(), type, plain)) {
      throw full();
    }
    return answer(firing);
  }

  private JsonElement paper(Firing firing, Ask ask) throws Trouble, IOException {
    boolean csv = Json.text(ask.json(), "kind").equals("csv");
    FiringLogText text = text(firing);
    String body = csv ? text.csv() : text.jsonText();
    var made =
        new MadePapers.Made(
            firing.begun().name() + (csv ? ".csv" : ".json"),
            csv ? "text/csv; charset=utf-8" : "application/json",
            body.getBytes(StandardCharsets.UTF_8));
    return KilnPapers.address(papers.keep(made));
  }

  private JsonElement fit(Firing firing) throws Trouble, StoreException {
    JsonObject answer = new LogLearning(firing, store.firings().readings(firing.id())).json();
    if (!answer.has("cooling_h") && !answer.has("loss_w_per_k")) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST,
          "Nothing of the kiln follows from these readings.",
          "The log is as it was.",
          "Read the display twice or more after the last line, while the kiln cools by itself; for"
              + " the loss read the electricity meter twice while the elements work.");
    }
    return answer;
  }

  private FiringLogText text(Firing firing) throws StoreException {
    return new FiringLogText(firing, store.firings().readings(firing.id()), clock.getZone());
  }

  private JsonElement answer(Firing firing) throws StoreException {
    JsonObject one = text(firing).json();
    var photos = new JsonArray();
    for (FiringPhotoTable.Photo photo : store.firingPhotos().of(firing.id())) {
      photos.add("print/photo/" + photo.id());
    }
    one.add("photos", photos);
    return one;
  }

  private Firing firing(String id) throws Trouble, StoreException {
    return store
        .firings()
        .find(StudyQuestions.hex(id, ID_BYTES))
        .orElseThrow(
            () ->
                new Trouble(
                    TroubleCode.NOT_FOUND, "There is no such firing.", "Load the page again."));
  }

  private static Trouble full() {
    return new Trouble(
        TroubleCode.TOO_LARGE, "The log is full.", "Nothing was changed.", "Begin another firing.");
  }
}
