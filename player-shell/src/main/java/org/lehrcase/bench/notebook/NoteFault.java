package org.lehrcase.bench.notebook;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import org.jspecify.annotations.Nullable;

/** Says why something cannot stand in a notebook; nothing was kept. */
public final class NoteFault extends Exception {
  private static final long serialVersionUID = 1;

  /**
   * Says why.
   *
   * @param message for a person, without a full stop
   */
  public NoteFault(String message) {
    super(message);
  }

  static String text(JsonObject json, String name) throws NoteFault {
    @Nullable JsonElement value = json.get(name);
    if (value == null || !value.isJsonPrimitive()) {
      throw new NoteFault(name + " is missing");
    }
    return value.getAsString();
  }

  static long whole(JsonObject json, String name, long most) throws NoteFault {
    try {
      double value = Double.parseDouble(text(json, name));
      if (value >= 0 && value <= most) {
        return Math.round(value);
      }
    } catch (NumberFormatException e) {
      throw new NoteFault(name + " is no number");
    }
    throw new NoteFault(name + " is from 0 to " + most);
  }
}
