package org.lehrcase.bench.templates;

import com.google.gson.JsonArray;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.bench.help.QrSquares;

/** A list as codes that an ordinary phone reads from the screen or from paper. */
public final class PhoneText {
  /** Letters in one code: more make squares too small for an old phone. */
  static final int MOST_LETTERS = 300;

  private PhoneText() {}

  /**
   * Divides a list between its lines.
   *
   * @param text lines
   * @return parts that each fit one code; none if there is nothing
   */
  static List<String> parts(String text) {
    List<String> parts = new ArrayList<>();
    StringBuilder part = new StringBuilder();
    for (String whole : text.split("\n")) {
      String line = whole.length() > MOST_LETTERS ? whole.substring(0, MOST_LETTERS) : whole;
      if (!part.isEmpty() && part.length() + line.length() >= MOST_LETTERS) {
        parts.add(part.toString());
        part.setLength(0);
      }
      part.append(part.isEmpty() || line.isEmpty() ? "" : "\n").append(line);
    }
    if (!part.toString().isBlank()) {
      parts.add(part.toString());
    }
    return parts;
  }

  /**
   * Draws a list as codes.
   *
   * @param text lines
   * @return codes, each as rows of 1 and 0
   */
  public static JsonArray codes(String text) {
    var codes = new JsonArray();
    for (String part : parts(text)) {
      var rows = new JsonArray();
      QrSquares.rows(part).forEach(rows::add);
      codes.add(rows);
    }
    return codes;
  }
}
