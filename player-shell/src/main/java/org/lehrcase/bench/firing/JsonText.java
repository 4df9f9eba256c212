package org.lehrcase.bench.firing;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.IOException;
import java.io.StringReader;

/** A request as text. */
public final class JsonText {
  private static final int MAX_DEPTH = 8;

  private JsonText() {}

  /**
   * Reads one JSON object; a byte-order mark is passed over.
   *
   * @throws FieldTrouble if it is anything else
   */
  public static JsonObject object(String json) throws FieldTrouble {
    String text = json.startsWith("\uFEFF") ? json.substring(1) : json;
    try (JsonReader reader = new JsonReader(new StringReader(text))) {
      reader.setStrictness(Strictness.LENIENT); // so that NaN is refused at its field
      reader.setNestingLimit(MAX_DEPTH);
      JsonElement element = JsonParser.parseReader(reader);
      if (!element.isJsonObject() || reader.peek() != JsonToken.END_DOCUMENT) {
        throw new FieldTrouble("", "the request must be one JSON object in braces");
      }
      return element.getAsJsonObject();
    } catch (JsonParseException | IOException e) {
      throw new FieldTrouble(
          "",
          "this is not JSON; names stand in quotes, numbers have a point and no comma: "
              + String.valueOf(e.getMessage())
                  .replaceAll("\\s*\\bSee https?://\\S+|^(\\w+\\.)+\\w+: ", ""));
    }
  }
}
