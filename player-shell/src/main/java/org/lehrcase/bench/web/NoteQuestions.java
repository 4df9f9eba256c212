package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.courses.Prose;
import org.lehrcase.bench.notebook.NoteContent;
import org.lehrcase.bench.notebook.NoteFault;
import org.lehrcase.bench.store.Note;
import org.lehrcase.bench.store.Note.Body;
import org.lehrcase.bench.store.Note.Kind;
import org.lehrcase.bench.store.Note.Place;
import org.lehrcase.bench.store.Note.Stem;
import org.lehrcase.bench.store.NoteTable;
import org.lehrcase.bench.store.Notebooks;
import org.lehrcase.bench.store.PieceTable.Follows;
import org.lehrcase.bench.store.StoreException;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.id.LessonId;

/** Notes, marks and loops of the open notebook. Every answer was durable before it was sent. */
final class NoteQuestions {
  private static final int ID_BYTES = 16;

  private final Notebooks notebooks;

  NoteQuestions(Notebooks notebooks) {
    this.notebooks = notebooks;
  }

  void addTo(JsonApi api) {
    api.on("GET notes", ask -> all());
    api.on("POST notes", this::add);
    api.onEach("PUT notes/*", this::change);
    api.onEach("POST notes/*/remove", (id, ask) -> remove(note(id, ask.json())));
    api.onEach("POST notes/*/undo", (id, ask) -> answer(table().undo(note(id, ask.json()))));
  }

  private NoteTable table() {
    return notebooks.notes();
  }

  private JsonElement all() throws StoreException {
    JsonArray list = new JsonArray();
    for (Note note : table().of(notebooks.names().open().id())) {
      if (!note.body().deleted()) {
        list.add(answer(note));
      }
    }
    JsonObject answer = new JsonObject();
    answer.add("notes", list);
    return answer;
  }

  private JsonElement add(Ask ask) throws Trouble, IOException {
    JsonObject body = ask.json();
    Kind kind = kind(Json.text(body, "kind"));
    NoteContent content = content(body);
    Optional<Follows> follows = Optional.empty();
    if (body.has("lesson")) {
      String lesson = StudyQuestions.hex(Json.text(body, "lesson"), LessonId.BYTES);
      follows =
          Optional.of(
              new Follows(
                  StudyQuestions.edition(Json.text(body, "edition")), LessonId.ofHex(lesson)));
    }
    Place place = new Place(notebooks.names().open().id(), follows);
    return answer(
        table().add(place, kind, content.json().toString()).orElseThrow(NoteQuestions::full));
  }

  private JsonElement change(String id, Ask ask) throws Trouble, IOException {
    JsonObject body = ask.json();
    Note note = note(id, body);
    return answer(table().change(note, new Body(content(body).json().toString(), false)));
  }

  private JsonElement remove(Note note) throws StoreException {
    return answer(table().change(note, new Body(note.body().content(), true)));
  }

  private Note note(String item, JsonObject body) throws Trouble, StoreException {
    String version = StudyQuestions.hex(Json.text(body, "version"), ID_BYTES);
    Stem stem = new Stem(StudyQuestions.hex(item, ID_BYTES), version, List.of());
    return table()
        .find(stem)
        .orElseThrow(
            () ->
                new Trouble(
                    TroubleCode.NOT_FOUND, "There is no such note.", "Load the page again."));
  }

  private static Kind kind(String word) throws Trouble {
    for (Kind kind : Kind.values()) {
      if (kind.text().equals(word)) {
        return kind;
      }
    }
    throw new Trouble(TroubleCode.BAD_REQUEST, "This is no kind of note.", "Load the page again.");
  }

  private static NoteContent content(JsonObject body) throws Trouble {
    try {
      if (!body.has("content") || !body.get("content").isJsonObject()) {
        throw new NoteFault("nothing stands in it");
      }
      return NoteContent.read(body.getAsJsonObject("content"));
    } catch (NoteFault e) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST,
          "This cannot be kept: " + e.getMessage() + ".",
          "What was kept before is kept.",
          "Make it shorter, or begin another note.");
    }
  }

  private static Trouble full() {
    return new Trouble(
        TroubleCode.TOO_LARGE,
        "There are " + NoteTable.MOST + " notes already.",
        "They are all kept.",
        "Start a fresh data folder for the next course.");
  }

  static JsonObject answer(Note note) {
    JsonObject one = new JsonObject();
    one.addProperty("item", note.stem().item());
    one.addProperty("version", note.stem().version());
    one.addProperty("kind", note.kind().text());
    note.place()
        .follows()
        .ifPresent(
            follows -> {
              one.addProperty("edition", follows.edition().hex());
              one.addProperty("lesson", follows.lesson().hex());
            });
    NoteContent content = NoteContent.stored(note.body().content());
    one.add("content", content.json());
    if (note.kind() == Kind.NOTE) {
      one.addProperty("html", Prose.html(content.text().getBytes(StandardCharsets.UTF_8)));
    }
    one.addProperty("deleted", note.body().deleted());
    one.addProperty("madeAtMillis", note.times().madeAtMillis());
    one.addProperty("changedAtMillis", note.times().changedAtMillis());
    return one;
  }
}
