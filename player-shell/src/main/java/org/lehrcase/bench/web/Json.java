package org.lehrcase.bench.web;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParseException;
import com.google.gson.JsonParser;
import com.google.gson.Strictness;
import com.google.gson.stream.JsonReader;
import com.google.gson.stream.JsonToken;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;

/** Reads strict JSON objects from requests and writes answers. */
public final class Json {
  private static final Gson GSON =
      new GsonBuilder().serializeNulls().disableHtmlEscaping().create();
  private static final int MAX_DEPTH = 16;

  private Json() {}

  static byte[] bytes(JsonElement element) {
    return GSON.toJson(element).getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Writes a value made of records, lists, maps, strings and numbers.
   *
   * @param value the value
   * @return its JSON
   */
  public static JsonElement tree(Object value) {
    return GSON.toJsonTree(value);
  }

  static JsonObject object(byte[] utf8) throws Trouble {
    try (JsonReader reader =
        new JsonReader(new StringReader(new String(utf8, StandardCharsets.UTF_8)))) {
      reader.setStrictness(Strictness.STRICT);
      reader.setNestingLimit(MAX_DEPTH);
      JsonElement element = JsonParser.parseReader(reader);
      if (reader.peek() != JsonToken.END_DOCUMENT || !element.isJsonObject()) {
        throw notJson();
      }
      return element.getAsJsonObject();
    } catch (JsonParseException | IOException e) {
      throw notJson();
    }
  }

  /**
   * Reads a text field.
   *
   * @param object the request
   * @param name the field
   * @return its value
   * @throws Trouble if it is missing
   */
  public static String text(JsonObject object, String name) throws Trouble {
    JsonElement element = object.get(name);
    if (element == null || !element.isJsonPrimitive()) {
      throw new Trouble(
          TroubleCode.BAD_REQUEST, "The request lacks \"" + name + "\".", "Load the page again.");
    }
    return element.getAsString();
  }

  static double number(JsonObject object, String name) throws Trouble {
    try {
      double number = Double.parseDouble(text(object, name));
      if (Double.isFinite(number) && number >= 0) {
        return number;
      }
    } catch (NumberFormatException e) {
      throw notJson();
    }
    throw notJson();
  }

  private static Trouble notJson() {
    return new Trouble(
        TroubleCode.BAD_REQUEST, "The request is not what the page sends.", "Load the page again.");
  }
}
