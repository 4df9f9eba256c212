package org.lehrcase.bench.notebook;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Where in a lesson something is pinned.
 *
 * @param where the kind of place
 * @param asset the paper, 32 hexadecimal digits, if it is pinned to one
 * @param at milliseconds of the film, the page from 1, or the line of a schedule from 1; 0 for the
 *     whole lesson
 * @param to where a stretch of the film ends, in milliseconds
 */
public record NotePin(Where where, Optional<String> asset, long at, OptionalLong to) {
  private static final Pattern ASSET = Pattern.compile("[0-9a-f]{32}");
  private static final long MOST_MILLIS = 48L * 3600 * 1000;
  private static final long MOST_PAGES = 10_000;

  /** The kinds of places. */
  public enum Where {
    /** The lesson as a whole. */
    LESSON,
    /** A moment of the film. */
    SECOND,
    /** A page of a paper. */
    PAGE,
    /** A line of a firing schedule. */
    LINE
  }

  /** Reads a place as a page sends it. */
  static NotePin read(JsonObject json) throws NoteFault {
    Where where = where(NoteFault.text(json, "where"));
    Optional<String> asset = asset(json.get("asset"));
    long most = where == Where.SECOND ? MOST_MILLIS : MOST_PAGES;
    long at = where == Where.LESSON ? 0 : NoteFault.whole(json, "at", most);
    if (where != Where.SECOND || !json.has("to") || json.get("to").isJsonNull()) {
      return new NotePin(where, asset, at, OptionalLong.empty());
    }
    long to = NoteFault.whole(json, "to", MOST_MILLIS);
    if (to <= at) {
      throw new NoteFault("a stretch ends after it begins");
    }
    return new NotePin(where, asset, at, OptionalLong.of(to));
  }

  private static Where where(String word) throws NoteFault {
    for (Where where : Where.values()) {
      if (where.name().equalsIgnoreCase(word)) {
        return where;
      }
    }
    throw new NoteFault("there is no such place as " + word);
  }

  private static Optional<String> asset(@Nullable JsonElement asset) throws NoteFault {
    if (asset == null || asset.isJsonNull()) {
      return Optional.empty();
    }
    if (!asset.isJsonPrimitive() || !ASSET.matcher(asset.getAsString()).matches()) {
      throw new NoteFault("a paper has an id of 32 digits");
    }
    return Optional.of(asset.getAsString());
  }

  JsonObject json() {
    JsonObject json = new JsonObject();
    json.addProperty("where", where.name().toLowerCase(java.util.Locale.ROOT));
    asset.ifPresent(id -> json.addProperty("asset", id));
    json.addProperty("at", at);
    to.ifPresent(end -> json.addProperty("to", end));
    return json;
  }
}
