package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.text.Normalizer;
import java.util.Optional;
import org.lehrcase.bench.store.PieceTable;
import org.lehrcase.bench.store.PieceTable.DoneStep;
import org.lehrcase.bench.store.PieceTable.Follows;
import org.lehrcase.bench.store.PieceTable.Piece;
import org.lehrcase.bench.store.PieceTable.State;
import org.lehrcase.bench.store.PieceTable.Words;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.id.LessonId;

/** What the pages ask about the student's pieces. Every answer was durable before it was sent. */
final class PieceQuestions {
  private static final int ID_BYTES = 16;

  private final PieceTable pieces;

  PieceQuestions(PieceTable pieces) {
    this.pieces = pieces;
  }

  void addTo(JsonApi api) {
    api.on("GET pieces", ask -> all());
    api.on("POST pieces", this::begin);
    api.onEach("PUT pieces/*", this::change);
    api.onEach("POST pieces/*/step", this::stepDone);
    api.onEach("POST pieces/*/finish", (id, ask) -> become(id, State.DONE));
    api.onEach("POST pieces/*/take-up", (id, ask) -> become(id, State.ACTIVE));
  }

  private JsonElement all() throws StoreException {
    JsonArray list = new JsonArray();
    for (Piece piece : pieces.all()) {
      list.add(answer(piece));
    }
    JsonObject answer = new JsonObject();
    answer.add("pieces", list);
    return answer;
  }

  private JsonElement begin(Ask ask) throws Trouble, IOException {
    JsonObject body = ask.json();
    Optional<Follows> follows = Optional.empty();
    if (body.has("lesson")) {
      String lesson = StudyQuestions.hex(Json.text(body, "lesson"), LessonId.BYTES);
      follows =
          Optional.of(
              new Follows(
                  StudyQuestions.edition(Json.text(body, "edition")), LessonId.ofHex(lesson)));
    }
    return answer(
        pieces
            .begin(words(line(body, "name", ""), line(body, "nextStep", "")), follows)
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.TOO_LARGE,
                        "There are " + PieceTable.MAX_PIECES + " pieces already.",
                        "Take up a finished one again.")));
  }

  private JsonElement change(String id, Ask ask) throws Trouble, IOException {
    Piece piece = piece(id);
    JsonObject body = ask.json();
    pieces.change(
        piece.id(),
        words(
            line(body, "name", piece.words().name()),
            line(body, "nextStep", piece.words().nextStep())));
    return answer(piece(id));
  }

  /** The page sends what it shows as done, so that a step still being saved is not lost. */
  private JsonElement stepDone(String id, Ask ask) throws Trouble, IOException {
    Piece piece = piece(id);
    JsonObject body = ask.json();
    String done = line(body, "done", piece.words().nextStep());
    String next = line(body, "nextStep", "");
    words(piece.words().name(), done);
    words(piece.words().name(), next);
    pieces.stepDone(piece, done, next);
    return answer(piece(id));
  }

  private JsonElement become(String id, State state) throws Trouble, StoreException {
    pieces.become(piece(id).id(), state);
    return answer(piece(id));
  }

  private Piece piece(String id) throws Trouble, StoreException {
    return pieces
        .find(StudyQuestions.hex(id, ID_BYTES))
        .orElseThrow(
            () ->
                new Trouble(
                    TroubleCode.NOT_FOUND, "There is no such piece.", "Load the page again."));
  }

  private static String line(JsonObject body, String name, String otherwise) throws Trouble {
    return body.has(name)
        ? Normalizer.normalize(Json.text(body, name), Normalizer.Form.NFC).strip()
        : otherwise;
  }

  private static Words words(String name, String nextStep) throws Trouble {
    try {
      return new Words(name, nextStep);
    } catch (IllegalArgumentException e) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST,
          "This cannot be kept: " + e.getMessage() + ".",
          "The piece is as it was before.",
          "Give the piece a name, and write at most " + PieceTable.MAX_TEXT + " characters.");
    }
  }

  private JsonObject answer(Piece piece) throws StoreException {
    JsonObject one = new JsonObject();
    one.addProperty("id", piece.id());
    one.addProperty("name", piece.words().name());
    one.addProperty("nextStep", piece.words().nextStep());
    one.addProperty("state", piece.state().text());
    one.add("edition", JsonNull.INSTANCE);
    one.add("lesson", JsonNull.INSTANCE);
    piece
        .follows()
        .ifPresent(
            follows -> {
              one.addProperty("edition", follows.edition().hex());
              one.addProperty("lesson", follows.lesson().hex());
            });
    one.addProperty("begunAtMillis", piece.begunAtMillis());
    one.addProperty("changedAtMillis", piece.changedAtMillis());
    JsonArray steps = new JsonArray();
    for (DoneStep step : pieces.steps(piece.id())) {
      JsonObject done = new JsonObject();
      done.addProperty("text", step.text());
      done.addProperty("doneAtMillis", step.doneAtMillis());
      steps.add(done);
    }
    one.add("steps", steps);
    return one;
  }
}
