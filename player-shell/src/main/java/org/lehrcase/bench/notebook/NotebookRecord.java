package org.lehrcase.bench.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.lehrcase.bench.store.Note;
import org.lehrcase.bench.store.Note.Body;
import org.lehrcase.bench.store.Note.Kind;
import org.lehrcase.bench.store.Note.Place;
import org.lehrcase.bench.store.Note.Stem;
import org.lehrcase.bench.store.Note.Times;
import org.lehrcase.bench.store.NoteTable;
import org.lehrcase.bench.store.NotebookTable.Notebook;
import org.lehrcase.bench.store.PieceTable.Follows;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/**
 * The first record of a copy: the notebook and its versions, as JSON. Foreign until it was read.
 */
final class NotebookRecord {
  private static final Pattern ID = Pattern.compile("[0-9a-f]{32}");
  private static final int MOST_PAST = 4000;
  private static final int MOST_NAME = 60;

  private NotebookRecord() {}

  /** A notebook with its versions. */
  record Inside(Notebook notebook, List<Note> notes) {}

  static byte[] write(Inside inside) {
    JsonObject json = new JsonObject();
    json.addProperty("notebook", inside.notebook().id());
    json.addProperty("name", inside.notebook().name());
    json.addProperty("made", inside.notebook().madeAtMillis());
    JsonArray notes = new JsonArray();
    inside.notes().forEach(note -> notes.add(write(note)));
    json.add("notes", notes);
    return json.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static JsonObject write(Note note) {
    JsonObject json = new JsonObject();
    json.addProperty("item", note.stem().item());
    json.addProperty("version", note.stem().version());
    JsonArray past = new JsonArray();
    note.stem().past().forEach(past::add);
    json.add("past", past);
    json.addProperty("kind", note.kind().text());
    note.place()
        .follows()
        .ifPresent(
            follows -> {
              json.addProperty("edition", follows.edition().hex());
              json.addProperty("lesson", follows.lesson().hex());
            });
    json.add("content", JsonParser.parseString(note.body().content()));
    json.addProperty("deleted", note.body().deleted());
    json.addProperty("made", note.times().madeAtMillis());
    json.addProperty("changed", note.times().changedAtMillis());
    return json;
  }

  static Inside read(byte[] bytes) throws NoteFault {
    try {
      JsonObject json =
          JsonParser.parseString(new String(bytes, StandardCharsets.UTF_8)).getAsJsonObject();
      String name = NoteFault.text(json, "name");
      if (name.isBlank() || name.length() > MOST_NAME || !name.matches("\\P{Cntrl}+")) {
        throw new NoteFault("its notebook has no proper name");
      }
      Notebook notebook = new Notebook(id(json, "notebook"), name, millis(json, "made"));
      List<Note> notes = new ArrayList<>();
      for (JsonElement note : NoteContent.array(json, "notes", NoteTable.MOST)) {
        notes.add(read(note.getAsJsonObject(), notebook.id()));
      }
      return new Inside(notebook, notes);
    } catch (JsonParseException | IllegalStateException | UnsupportedOperationException e) {
      throw new NoteFault("it does not hold what a notebook holds");
    }
  }

  private static Note read(JsonObject json, String notebook) throws NoteFault {
    List<String> past = new ArrayList<>();
    for (JsonElement version : NoteContent.array(json, "past", MOST_PAST)) {
      past.add(id(version.getAsString()));
    }
    Optional<Follows> follows =
        json.has("lesson")
            ? Optional.of(
                new Follows(
                    EditionId.ofHex(id(json, "edition")), LessonId.ofHex(id(json, "lesson"))))
            : Optional.empty();
    if (!json.has("content") || !json.get("content").isJsonObject()) {
      throw new NoteFault("a note in it is empty");
    }
    String content = NoteContent.read(json.getAsJsonObject("content")).json().toString();
    return new Note(
        new Stem(id(json, "item"), id(json, "version"), past),
        new Place(notebook, follows),
        kind(NoteFault.text(json, "kind")),
        new Body(content, Boolean.parseBoolean(NoteFault.text(json, "deleted"))),
        new Times(millis(json, "made"), millis(json, "changed")));
  }

  private static Kind kind(String word) throws NoteFault {
    for (Kind kind : Kind.values()) {
      if (kind.name().equals(word.toUpperCase(Locale.ROOT))) {
        return kind;
      }
    }
    throw new NoteFault("it holds something newer than this program");
  }

  private static long millis(JsonObject json, String name) throws NoteFault {
    return NoteFault.whole(json, name, 1L << 52);
  }

  private static String id(JsonObject json, String name) throws NoteFault {
    return id(NoteFault.text(json, name));
  }

  private static String id(String text) throws NoteFault {
    if (!ID.matcher(text).matches()) {
      throw new NoteFault("a name in it is none");
    }
    return text;
  }
}
