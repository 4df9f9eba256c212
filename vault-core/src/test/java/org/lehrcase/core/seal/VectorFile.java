package org.lehrcase.core.seal;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * One committed vector: lines of {@code name: value}. A part file is given as the name of a base
 * file and the edits that bring in the one fault, so that the vectors stay small.
 *
 * @param fields the values by name, in the order of the file
 */
public record VectorFile(Map<String, String> fields) {
  /** Reads a vector. */
  public static VectorFile parse(String text) {
    Map<String, String> fields = new LinkedHashMap<>();
    for (String line : text.split("\n")) {
      int colon = line.indexOf(": ");
      fields.put(line.substring(0, colon), line.substring(colon + 2));
    }
    return new VectorFile(fields);
  }

  /** Returns the value of a name that must be there. */
  public String get(String name) {
    return Objects.requireNonNull(fields.get(name), name);
  }

  /** The edits, none if the base is used as it is. */
  public List<String> edits() {
    String edits = get("edits");
    return edits.equals("none") ? List.of() : List.of(edits.split("; "));
  }

  /** Returns the file. */
  public String text() {
    var text = new StringBuilder();
    fields.forEach((name, value) -> text.append(name).append(": ").append(value).append('\n'));
    return text.toString();
  }
}
