package org.lehrcase.bench.store;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.lehrcase.bench.store.PieceTable.Follows;

/**
 * One version of what a student has written, marked or looped. An item usually has one version; two
 * that know nothing of each other, written on two laptops, stand side by side until the student
 * deletes one.
 *
 * @param stem which item and version it is
 * @param place the notebook, and the lesson that it belongs to
 * @param kind what it is
 * @param body what stands in it
 * @param times when it was made and changed
 */
public record Note(Stem stem, Place place, Kind kind, Body body, Times times) {
  /** What a student pins to a lesson. */
  public enum Kind {
    /** Text, pictures, a sketch. */
    NOTE,
    /** A place to come back to. */
    MARK,
    /** A stretch of the film to repeat. */
    LOOP;

    /** Returns the word that pages know, in lower case. */
    public String text() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Which version of which item.
   *
   * @param item the item, 32 hexadecimal digits
   * @param version this version, 32 hexadecimal digits
   * @param past every version that this one replaces
   */
  public record Stem(String item, String version, List<String> past) {
    /** Copies the list. */
    public Stem {
      past = List.copyOf(past);
    }

    static String fresh() {
      return UUID.randomUUID().toString().replace("-", "");
    }
  }

  /**
   * Where it belongs.
   *
   * @param notebook the notebook
   * @param follows the lesson, if it belongs to one
   */
  public record Place(String notebook, Optional<Follows> follows) {}

  /**
   * What stands in it.
   *
   * @param content a JSON object, checked by whoever keeps it
   * @param deleted whether the student has put it away; it can be fetched back
   */
  public record Body(String content, boolean deleted) {}

  /**
   * When.
   *
   * @param madeAtMillis when the item was made, UTC
   * @param changedAtMillis when this version was changed last, UTC
   */
  public record Times(long madeAtMillis, long changedAtMillis) {}
}
