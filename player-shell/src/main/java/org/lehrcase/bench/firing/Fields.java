package org.lehrcase.bench.firing;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** The fields of a JSON object, read one by one, each refusal with the field's path. */
public final class Fields {
  private static final int LONGEST_TEXT = 100;
  private static final int MOST_ITEMS = 1000;

  private final JsonObject object;
  private final String path;

  /**
   * Reads an object.
   *
   * @param object the object
   * @param path where it stands, with a point at its end; empty for the whole request
   */
  public Fields(JsonObject object, String path) {
    this.object = object;
    this.path = path;
  }

  /** Returns the path of a field. */
  public String path(String name) {
    return path + name;
  }

  /** Returns the path of this object, with a point at its end. */
  public String path() {
    return path;
  }

  /** Says whether a field is there and not null. */
  public boolean has(String name) {
    return object.has(name) && !object.get(name).isJsonNull();
  }

  /** Returns the paths of the fields that nobody reads. */
  public List<String> unknown(Set<String> known) {
    return object.keySet().stream().filter(k -> !known.contains(k)).map(this::path).toList();
  }

  /** Reads a number that may be missing. */
  public OptionalDouble number(String name) throws FieldTrouble {
    return has(name)
        ? OptionalDouble.of(numberOf(object.get(name), path(name)))
        : OptionalDouble.empty();
  }

  /** Reads a number, or takes another one if it is missing. */
  public double number(String name, double otherwise) throws FieldTrouble {
    return number(name).orElse(otherwise);
  }

  /**
   * Reads a number that must lie in a range; both ends are allowed. What has no other value, {@link
   * Double#NaN}, must be there.
   */
  public double number(String name, double otherwise, double least, double most)
      throws FieldTrouble {
    double value = number(name, otherwise);
    if (Double.isNaN(value)) {
      throw new FieldTrouble(path(name), FieldRange.missing(name, least, most));
    }
    if (!(value >= least && value <= most)) {
      throw new FieldTrouble(path(name), FieldRange.mustLie(name, least, most));
    }
    return value;
  }

  /** Reads a whole number that must lie in a range. */
  public int whole(String name, double otherwise, double least, double most) throws FieldTrouble {
    double value = number(name, otherwise, least, most);
    if (value != Math.rint(value)) {
      throw new FieldTrouble(path(name), "must be a whole number");
    }
    return (int) value;
  }

  /** Reads a short text that may be missing. */
  public Optional<String> text(String name) throws FieldTrouble {
    if (!has(name)) {
      return Optional.empty();
    }
    JsonElement element = object.get(name);
    boolean text = element.isJsonPrimitive() && element.getAsJsonPrimitive().isString();
    if (!text || element.getAsString().length() > LONGEST_TEXT) {
      throw new FieldTrouble(path(name), "must be a text of at most 100 letters");
    }
    return Optional.of(element.getAsString());
  }

  /** Reads one of some words. */
  public String word(String name, String otherwise, List<String> words) throws FieldTrouble {
    String word = text(name).orElse(otherwise);
    if (!words.contains(word)) {
      throw new FieldTrouble(path(name), "must be one of: " + String.join(", ", words));
    }
    return word;
  }

  /** Reads an object that may be missing. */
  public Optional<Fields> object(String name) throws FieldTrouble {
    if (!has(name)) {
      return Optional.empty();
    }
    if (!object.get(name).isJsonObject()) {
      throw new FieldTrouble(path(name), "must be an object in braces");
    }
    return Optional.of(new Fields(object.getAsJsonObject(name), path(name) + "."));
  }

  /** Says whether a field is a single value. */
  public boolean isText(String name) {
    return has(name) && object.get(name).isJsonPrimitive();
  }

  /** Says whether a field is exactly this text. */
  public boolean isText(String name, String text) {
    return isText(name) && object.get(name).getAsString().equals(text);
  }

  /** Reads a list of objects that may be missing. */
  public Optional<List<Fields>> objects(String name) throws FieldTrouble {
    if (!has(name)) {
      return Optional.empty();
    }
    List<Fields> items = new ArrayList<>();
    for (JsonElement element : array(name)) {
      String at = path(name) + "[" + items.size() + "]";
      if (!element.isJsonObject()) {
        throw new FieldTrouble(at, "must be an object in braces");
      }
      items.add(new Fields(element.getAsJsonObject(), at + "."));
    }
    return Optional.of(items);
  }

  /** Reads a list of numbers. */
  public List<Double> numbers(String name) throws FieldTrouble {
    List<Double> numbers = new ArrayList<>();
    for (JsonElement element : array(name)) {
      numbers.add(numberOf(element, path(name) + "[" + numbers.size() + "]"));
    }
    return numbers;
  }

  /** Reads a list of texts; none if it is missing. */
  public List<String> texts(String name) throws FieldTrouble {
    List<String> texts = new ArrayList<>();
    if (has(name)) {
      for (JsonElement element : array(name)) {
        String at = path(name) + "[" + texts.size() + "]";
        if (!element.isJsonPrimitive() || !element.getAsJsonPrimitive().isString()) {
          throw new FieldTrouble(at, "must be a text in quotes");
        }
        texts.add(element.getAsString());
      }
    }
    return texts;
  }

  /** Reads a list of pairs of numbers. */
  public List<double[]> pairs(String name) throws FieldTrouble {
    List<double[]> pairs = new ArrayList<>();
    for (JsonElement element : array(name)) {
      String at = path(name) + "[" + pairs.size() + "]";
      if (!element.isJsonArray() || element.getAsJsonArray().size() != 2) {
        throw new FieldTrouble(at, "must be two numbers in brackets");
      }
      JsonArray pair = element.getAsJsonArray();
      pairs.add(new double[] {numberOf(pair.get(0), at), numberOf(pair.get(1), at)});
    }
    return pairs;
  }

  /** Says whether a field is a list whose first item is a list, or an object. */
  public boolean isListOf(String name, boolean objects) {
    boolean list = has(name) && object.get(name).isJsonArray();
    if (!list || object.getAsJsonArray(name).isEmpty()) {
      return false;
    }
    JsonElement first = object.getAsJsonArray(name).get(0);
    return objects ? first.isJsonObject() : first.isJsonArray();
  }

  /** Reads a yes or no. */
  public boolean flag(String name, boolean otherwise) throws FieldTrouble {
    if (!has(name)) {
      return otherwise;
    }
    JsonElement element = object.get(name);
    if (!element.isJsonPrimitive() || !element.getAsJsonPrimitive().isBoolean()) {
      throw new FieldTrouble(path(name), "must be true or false");
    }
    return element.getAsBoolean();
  }

  private JsonArray array(String name) throws FieldTrouble {
    if (!has(name) || !object.get(name).isJsonArray()) {
      throw new FieldTrouble(path(name), "must be a list in brackets");
    }
    JsonArray array = object.getAsJsonArray(name);
    if (array.size() > MOST_ITEMS) {
      throw new FieldTrouble(path(name), "must have at most 1000 items");
    }
    return array;
  }

  private static double numberOf(JsonElement element, String at) throws FieldTrouble {
    String written = element.isJsonPrimitive() ? element.getAsString() : element.toString();
    if (written.indexOf(',') > 0 && written.matches("[+-]?\\d+,\\d+")) {
      throw new FieldTrouble(
          at, "write " + written.replace(',', '.') + " with a point, not \"" + written + "\"");
    }
    try {
      double value = Double.parseDouble(written);
      boolean number = element.getAsJsonPrimitive().isNumber();
      if (number && Double.isFinite(value)) {
        return value;
      }
    } catch (NumberFormatException | IllegalStateException e) {
      throw notANumber(at, written);
    }
    throw notANumber(at, written);
  }

  private static FieldTrouble notANumber(String at, String written) {
    String shown = written.length() > 30 ? written.substring(0, 30) + "…" : written;
    return new FieldTrouble(at, "must be a number without quotes, not " + shown);
  }
}
