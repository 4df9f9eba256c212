package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.text.Normalizer;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.layers.LayersService;
import org.lehrcase.bench.notebook.NoteFault;
import org.lehrcase.bench.notebook.NotePicture;
import org.lehrcase.bench.store.FiringLogTable.Firing;
import org.lehrcase.bench.store.PieceFollowTable;
import org.lehrcase.bench.store.PieceFollowTable.SheetState;
import org.lehrcase.bench.store.PieceTable.Piece;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.store.StudyStore;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/**
 * What the page of one piece asks: its plan, the state of every sheet, its pictures and firings.
 * Every answer was durable before it was sent.
 */
final class PieceFollowQuestions {
  private static final int MOST_PLAN_BYTES = 4 << 20;
  private static final int ID_BYTES = 16;

  private final StudyStore store;

  PieceFollowQuestions(StudyStore store) {
    this.store = store;
  }

  void addTo(JsonApi api) {
    api.onEach("GET pieces/*/follow", (id, ask) -> all(piece(store, id)));
    api.onEach(
        "PUT pieces/*/plan",
        (id, ask) -> {
          Piece piece = piece(store, id);
          JsonObject plan = ask.json(MOST_PLAN_BYTES);
          return KilnQuestions.inFields(() -> plan(piece, plan));
        });
    api.onEach(
        "PUT pieces/*/sheet",
        (id, ask) -> {
          Piece piece = piece(store, id);
          JsonObject state = ask.json();
          return KilnQuestions.inFields(() -> sheet(piece, new Fields(state, "")));
        });
    api.onEach("POST pieces/*/photo", (id, ask) -> photo(piece(store, id), ask));
  }

  static Piece piece(StudyStore store, String id) throws Trouble, StoreException {
    return store
        .pieces()
        .find(StudyQuestions.hex(id, ID_BYTES))
        .orElseThrow(
            () ->
                new Trouble(
                    TroubleCode.NOT_FOUND, "There is no such piece.", "Load the page again."));
  }

  private JsonElement all(Piece piece) throws StoreException {
    var answer = new JsonObject();
    PieceFollowTable following = store.following();
    JsonElement plan =
        following.plan(piece.id()).map(JsonParser::parseString).orElse(JsonNull.INSTANCE);
    answer.add("plan", plan);
    var sheets = new JsonArray();
    for (SheetState state : following.sheets(piece.id())) {
      sheets.add(Json.tree(state));
    }
    answer.add("sheets", sheets);
    var photos = new JsonArray();
    for (PieceFollowTable.Photo photo : following.photos(piece.id())) {
      var one = new JsonObject();
      one.addProperty("address", "print/piece-photo/" + photo.id());
      one.addProperty("caption", photo.caption());
      one.addProperty("atMillis", photo.atMillis());
      photos.add(one);
    }
    answer.add("photos", photos);
    answer.add("firings", firings(piece));
    return answer;
  }

  private JsonArray firings(Piece piece) throws StoreException {
    var list = new JsonArray();
    for (Firing firing : store.firings().all()) {
      if (firing.begun().piece().filter(piece.id()::equals).isPresent()) {
        var one = new JsonObject();
        one.addProperty("id", firing.id());
        one.addProperty("name", firing.begun().name());
        one.addProperty("startedAtMillis", firing.begun().startedAtMillis());
        one.addProperty("ended", firing.endedAtMillis().isPresent());
        one.addProperty("readings", store.firings().readings(firing.id()).size());
        list.add(one);
      }
    }
    return list;
  }

  /** Only what can be planned is kept, so that its papers can be made on any later day. */
  private JsonElement plan(Piece piece, JsonObject plan) throws FieldTrouble, StoreException {
    LayersService.Answer answer = LayersService.answer(plan.toString());
    if (!answer.possible()) {
      throw new FieldTrouble(
          "sheets", answer.json().getAsJsonObject("impossible").get("message").getAsString());
    }
    store.following().keepPlan(piece.id(), plan.toString());
    return all(piece);
  }

  private JsonElement sheet(Piece piece, Fields state) throws FieldTrouble, StoreException {
    String note = Normalizer.normalize(state.text("note").orElse(""), Normalizer.Form.NFC).strip();
    try {
      store
          .following()
          .keep(
              piece.id(),
              new SheetState(
                  (int) state.number("sheet", 0),
                  state.flag("cut", false),
                  state.flag("painted", false),
                  (int) state.number("coats", 0),
                  (int) state.number("fired", 0),
                  note));
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of("", e);
    }
    return all(piece);
  }

  private JsonElement photo(Piece piece, Ask ask) throws Trouble, IOException {
    byte[] plain = clean(ask.file());
    String caption = Normalizer.normalize(ask.fileName(), Normalizer.Form.NFC).strip();
    try {
      if (!store.following().addPhoto(piece.id(), caption, plain)) {
        throw new Trouble(
            TroubleCode.TOO_LARGE,
            "A piece keeps " + PieceFollowTable.MOST_PHOTOS + " pictures.",
            "All of them are kept.",
            "Start another piece for what comes after.");
      }
    } catch (IllegalArgumentException e) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST,
          "This cannot be kept: " + e.getMessage() + ".",
          "Nothing was changed.",
          "Write a shorter caption on one line.");
    }
    return all(piece);
  }

  private static byte[] clean(byte[] file) throws Trouble {
    try {
      return NotePicture.clean(file).bytes();
    } catch (NoteFault e) {
      throw new Trouble(
          TroubleCode.UNKNOWN_FILE,
          "This picture cannot be kept: " + e.getMessage() + ".",
          "Nothing was changed.",
          "Add it on the page, which makes it small, or share it from the phone as JPEG.");
    }
  }
}
