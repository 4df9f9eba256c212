package org.lehrcase.bench.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What stands in a note, a mark or a loop. Only what is known here is kept; texts are in Unicode's
 * composed form (NFC).
 *
 * @param text Markdown; the name of a loop
 * @param pin where it is pinned
 * @param pictures ids of the student's own pictures
 * @param sketch strokes over the paused picture
 */
public record NoteContent(String text, NotePin pin, List<String> pictures, List<Stroke> sketch) {
  /** Most UTF-16 units of a text. */
  public static final int MOST_TEXT = 20_000;

  /** Most pictures of one note. */
  public static final int MOST_PICTURES = 12;

  private static final int MOST_STROKES = 400;
  private static final int MOST_BYTES = 60_000;
  private static final Pattern PICTURE = Pattern.compile("[0-9a-f]{32}");

  /** Copies the lists. */
  public NoteContent {
    pictures = List.copyOf(pictures);
    sketch = List.copyOf(sketch);
  }

  /**
   * Reads what a page or a copy of a notebook holds.
   *
   * @param json the object
   * @return what may be kept
   * @throws NoteFault if it is too large, or not what a page sends
   */
  public static NoteContent read(JsonObject json) throws NoteFault {
    String text = Normalizer.normalize(NoteFault.text(json, "text"), Normalizer.Form.NFC);
    if (text.length() > MOST_TEXT) {
      throw new NoteFault("a note has at most " + MOST_TEXT + " letters");
    }
    if (!json.has("pin") || !json.get("pin").isJsonObject()) {
      throw new NoteFault("pin is missing");
    }
    NoteContent content =
        new NoteContent(
            text, NotePin.read(json.getAsJsonObject("pin")), pictures(json), sketch(json));
    if (content.json().toString().length() > MOST_BYTES) {
      throw new NoteFault("this is more than fits into one note; begin another");
    }
    return content;
  }

  /**
   * Reads what the store holds.
   *
   * @param stored a JSON object that was checked when it was kept
   * @return what stands in it
   */
  public static NoteContent stored(String stored) {
    try {
      return read(JsonParser.parseString(stored).getAsJsonObject());
    } catch (NoteFault e) {
      throw new IllegalStateException("the store holds what was never let in", e);
    }
  }

  private static List<String> pictures(JsonObject json) throws NoteFault {
    List<String> ids = new ArrayList<>();
    for (JsonElement id : array(json, "pictures", MOST_PICTURES)) {
      if (!id.isJsonPrimitive() || !PICTURE.matcher(id.getAsString()).matches()) {
        throw new NoteFault("a picture has an id of 32 digits");
      }
      ids.add(id.getAsString());
    }
    return ids;
  }

  private static List<Stroke> sketch(JsonObject json) throws NoteFault {
    List<Stroke> strokes = new ArrayList<>();
    for (JsonElement stroke : array(json, "sketch", MOST_STROKES)) {
      if (!stroke.isJsonObject()) {
        throw new NoteFault("a sketch is made of strokes");
      }
      strokes.add(Stroke.read(stroke.getAsJsonObject()));
    }
    return strokes;
  }

  static JsonArray array(JsonObject json, String name, int most) throws NoteFault {
    @Nullable JsonElement value = json.get(name);
    if (value == null || value.isJsonNull()) {
      return new JsonArray();
    }
    if (!value.isJsonArray() || value.getAsJsonArray().size() > most) {
      throw new NoteFault(name + " are at most " + most);
    }
    return value.getAsJsonArray();
  }

  /**
   * Writes it.
   *
   * @return a JSON object that {@link #read} takes
   */
  public JsonObject json() {
    JsonObject json = new JsonObject();
    json.addProperty("text", text);
    json.add("pin", pin.json());
    JsonArray ids = new JsonArray();
    pictures.forEach(ids::add);
    json.add("pictures", ids);
    JsonArray strokes = new JsonArray();
    sketch.forEach(stroke -> strokes.add(stroke.json()));
    json.add("sketch", strokes);
    return json;
  }
}
