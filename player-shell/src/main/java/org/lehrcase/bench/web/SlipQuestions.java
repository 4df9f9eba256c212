package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.kilns.FiringLogText;
import org.lehrcase.bench.kilns.MadePapers;
import org.lehrcase.bench.kilns.PaperUnits;
import org.lehrcase.bench.store.FiringLogTable.Firing;
import org.lehrcase.bench.store.PieceFollowTable;
import org.lehrcase.bench.store.PieceTable.Piece;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.templates.QuestionSlip;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;

/** The question slip of a piece, out of everything that is kept about it. */
final class SlipQuestions {
  private static final int MOST_FIRINGS = 3;
  private static final int MOST_PHOTOS = 6;
  private static final int MOST_QUESTION = 4000;

  private final StudyStore store;
  private final MadePapers papers;
  private final BuyerWords buyer;
  private final Clock clock;

  SlipQuestions(Bench bench, MadePapers papers, Clock clock) {
    this.store = bench.store();
    this.papers = papers;
    this.buyer = new BuyerWords(bench);
    this.clock = clock;
  }

  void addTo(JsonApi api) {
    api.onEach(
        "POST pieces/*/slip",
        (id, ask) -> {
          Piece piece = PieceFollowQuestions.piece(store, id);
          JsonObject body = ask.json();
          return KilnQuestions.inFields(() -> slip(piece, body));
        });
  }

  private JsonElement slip(Piece piece, JsonObject body) throws FieldTrouble, Trouble, IOException {
    String question = Json.text(body, "question").strip();
    if (question.isEmpty() || question.length() > MOST_QUESTION) {
      throw new FieldTrouble(
          "question", "write what happened, in at most " + MOST_QUESTION + " letters");
    }
    Optional<JsonObject> plan =
        store
            .following()
            .plan(piece.id())
            .map(JsonParser::parseString)
            .map(JsonElement::getAsJsonObject);
    var facts =
        new QuestionSlip.Facts(
            piece.words().name(),
            question,
            Json.text(body, "lesson").strip(),
            plan,
            sheets(piece),
            firings(piece, PaperUnits.read(body)),
            photos(piece));
    try {
      return KilnPapers.address(papers.keep(QuestionSlip.make(facts, body, buyer.owner())));
    } catch (VaultException e) {
      throw Trouble.of(e);
    }
  }

  private List<String> sheets(Piece piece) throws IOException {
    List<String> lines = new ArrayList<>();
    for (PieceFollowTable.SheetState state : store.following().sheets(piece.id())) {
      lines.add(
          String.format(
              Locale.ROOT,
              "Sheet %d: %s, %s, %d coats, fired %d times. %s",
              state.sheet(),
              state.cut() ? "cut" : "not cut",
              state.painted() ? "painted" : "not painted",
              state.coats(),
              state.fired(),
              state.note()));
    }
    return lines;
  }

  private List<QuestionSlip.Fired> firings(Piece piece, PaperUnits units) throws IOException {
    List<QuestionSlip.Fired> fired = new ArrayList<>();
    for (Firing firing : store.firings().all()) {
      boolean mine = firing.begun().piece().filter(piece.id()::equals).isPresent();
      if (mine && fired.size() < MOST_FIRINGS) {
        fired.add(fired(firing, units));
      }
    }
    return fired;
  }

  private QuestionSlip.Fired fired(Firing firing, PaperUnits units) throws IOException {
    JsonObject json =
        new FiringLogText(firing, store.firings().readings(firing.id()), clock.getZone()).json();
    List<List<String>> readings = new ArrayList<>();
    for (JsonElement element : json.getAsJsonArray("readings")) {
      JsonObject row = element.getAsJsonObject();
      String shown = row.has("display_c") ? units.celsius(row.get("display_c").getAsDouble()) : "";
      readings.add(
          List.of(
              row.get("at").getAsString(),
              shown,
              units.celsius(row.get("predicted_c").getAsDouble()),
              row.get("note").getAsString()));
    }
    return new QuestionSlip.Fired(
        firing.begun().name() + ", " + json.get("started_at").getAsString(),
        typed(json.getAsJsonObject("plan").getAsJsonObject("answer"), units),
        readings,
        outcome(json.getAsJsonObject("outcome")));
  }

  /** What was to be typed into the controller, or, without one, the computed steps. */
  private static List<List<String>> typed(JsonObject answer, PaperUnits units) {
    List<List<String>> lines = new ArrayList<>();
    JsonObject controller = answer.getAsJsonObject("controller");
    if (controller != null && controller.get("refused").isJsonNull()) {
      for (JsonElement element : controller.getAsJsonArray("type_in")) {
        JsonObject line = element.getAsJsonObject();
        lines.add(
            List.of(
                said(line, "name"), said(line, "rate"), said(line, "target"), said(line, "hold")));
      }
      return lines;
    }
    JsonArray segments = answer.getAsJsonArray("segments");
    for (JsonElement element : segments) {
      JsonObject line = element.getAsJsonObject();
      JsonElement rate = line.get("rate_c_per_h");
      lines.add(
          List.of(
              said(line, "name"),
              rate.isJsonNull() ? "free" : units.sentence(rate.getAsString() + " °C/h"),
              units.celsius(line.get("target_c").getAsDouble()),
              said(line, "hold_min") + " min"));
    }
    return lines;
  }

  private static String said(JsonObject from, String name) {
    return from.has(name) && !from.get(name).isJsonNull() ? from.get(name).getAsString() : "";
  }

  private static String outcome(JsonObject outcome) {
    List<String> said = new ArrayList<>();
    for (String name : outcome.keySet()) {
      JsonElement value = outcome.get(name);
      if (value.isJsonPrimitive() && !value.getAsString().isBlank()) {
        boolean yes = value.getAsJsonPrimitive().isBoolean();
        if (!yes || value.getAsBoolean()) {
          said.add(yes ? name : name + ": " + value.getAsString());
        }
      }
    }
    return String.join("; ", said);
  }

  private List<QuestionSlip.Photo> photos(Piece piece) throws IOException {
    List<PieceFollowTable.Photo> all = store.following().photos(piece.id());
    List<QuestionSlip.Photo> photos = new ArrayList<>();
    for (PieceFollowTable.Photo photo :
        all.subList(Math.max(0, all.size() - MOST_PHOTOS), all.size())) {
      Optional<byte[]> picture = store.following().picture(photo.id());
      picture.ifPresent(jpeg -> photos.add(0, new QuestionSlip.Photo(photo.caption(), jpeg)));
    }
    return photos;
  }
}
