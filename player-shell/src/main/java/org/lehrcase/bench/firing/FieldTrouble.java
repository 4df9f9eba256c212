package org.lehrcase.bench.firing;

/** A field of a request that cannot be used, and what to write instead. */
public final class FieldTrouble extends Exception {
  private static final long serialVersionUID = 1L;

  private final String field;

  /**
   * Creates it.
   *
   * @param field path of the field, such as {@code kiln.lines}; empty for the whole request
   * @param message what is wrong and what to write instead
   */
  public FieldTrouble(String field, String message) {
    super(message);
    this.field = field;
  }

  /**
   * Puts a refusal of the core at its field: its messages begin with the field's name.
   *
   * @param path of the object, with a point at its end
   * @param refused what the core said
   */
  public static FieldTrouble of(String path, IllegalArgumentException refused) {
    String message = String.valueOf(refused.getMessage());
    int end = 0;
    while (end < message.length()
        && (Character.isLowerCase(message.charAt(end))
            || message.charAt(end) == '_'
            || Character.isDigit(message.charAt(end)))) {
      end++;
    }
    return new FieldTrouble(path + message.substring(0, end), message);
  }

  /** Returns the path of the field. */
  public String field() {
    return field;
  }
}
