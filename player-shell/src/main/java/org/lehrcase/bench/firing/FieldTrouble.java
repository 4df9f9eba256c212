package org.lehrcase.bench.firing;

import org.lehrcase.core.glass.say.Phrase;
import org.lehrcase.core.glass.say.Refused;

/** A field of a request that cannot be used, and what to write instead. */
public final class FieldTrouble extends Exception {
  private static final long serialVersionUID = 1L;

  private final String field;
  private final transient Phrase what;

  /**
   * Creates it.
   *
   * @param field path of the field, such as {@code kiln.lines}; empty for the whole request
   * @param message what is wrong and what to write instead
   */
  public FieldTrouble(String field, String message) {
    this(field, Phrase.plain(message));
  }

  /**
   * Creates it.
   *
   * @param field path of the field
   * @param what what is wrong and what to write instead, with its figures
   */
  public FieldTrouble(String field, Phrase what) {
    super(what.text());
    this.field = field;
    this.what = what;
  }

  /**
   * Puts a refusal of the core at its field: its messages begin with the field's name, which is not
   * said twice.
   *
   * @param path of the object, with a point at its end
   * @param refused what the core said
   */
  public static FieldTrouble of(String path, IllegalArgumentException refused) {
    if (refused instanceof Refused figure) {
      return new FieldTrouble(path + figure.field(), figure.what());
    }
    String message = String.valueOf(refused.getMessage());
    int end = 0;
    while (end < message.length()
        && (Character.isLowerCase(message.charAt(end))
            || message.charAt(end) == '_'
            || Character.isDigit(message.charAt(end)))) {
      end++;
    }
    String rest = message.substring(end);
    boolean verb = rest.startsWith(" must ") || rest.startsWith(" is missing");
    return new FieldTrouble(path + message.substring(0, end), verb ? rest.strip() : message);
  }

  /** Returns the path of the field. */
  public String field() {
    return field;
  }

  /** Returns what is wrong, for somebody's units. */
  public Phrase what() {
    return what;
  }

  /** Returns the same of a field that lies deeper. */
  public FieldTrouble under(String path) {
    return new FieldTrouble(path + field, what);
  }
}
