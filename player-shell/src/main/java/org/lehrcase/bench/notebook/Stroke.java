package org.lehrcase.bench.notebook;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;

/**
 * One stroke of a sketch.
 *
 * @param colour which of the six pens
 * @param width thickness in thousandths of the picture's width
 * @param points across and down, across and down, in ten-thousandths of the picture's size
 */
public record Stroke(int colour, int width, List<Integer> points) {
  /** Points span 0 to this in each direction. */
  public static final int SPAN = 10_000;

  private static final int COLOURS = 6;
  private static final int WIDEST = 100;
  private static final int MOST_NUMBERS = 8000;

  /** Copies the list. */
  public Stroke {
    points = List.copyOf(points);
  }

  static Stroke read(JsonObject json) throws NoteFault {
    List<Integer> points = new ArrayList<>();
    for (JsonElement number : NoteContent.array(json, "points", MOST_NUMBERS)) {
      if (!number.isJsonPrimitive() || !number.getAsJsonPrimitive().isNumber()) {
        throw new NoteFault("a stroke is made of numbers");
      }
      long at = Math.round(number.getAsDouble());
      points.add((int) Math.max(0, Math.min(SPAN, at)));
    }
    if (points.isEmpty() || points.size() % 2 != 0) {
      throw new NoteFault("a stroke has points");
    }
    return new Stroke(
        (int) NoteFault.whole(json, "colour", COLOURS - 1),
        (int) NoteFault.whole(json, "width", WIDEST),
        points);
  }

  JsonObject json() {
    JsonObject json = new JsonObject();
    json.addProperty("colour", colour);
    json.addProperty("width", width);
    JsonArray numbers = new JsonArray();
    points.forEach(numbers::add);
    json.add("points", numbers);
    return json;
  }
}
