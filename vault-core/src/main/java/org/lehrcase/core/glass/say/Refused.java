package org.lehrcase.core.glass.say;

/** A figure that cannot be used: which one, and what it may be. */
public final class Refused extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final String field;
  private final transient Phrase what;

  /**
   * Creates it.
   *
   * @param field its JSON name
   * @param what a sentence that goes on after the name, such as "must lie between …"
   */
  public Refused(String field, Phrase what) {
    super(field + " " + what.text());
    this.field = field;
    this.what = what;
  }

  /** Returns the JSON name of the figure. */
  public String field() {
    return field;
  }

  /** Returns the sentence that goes on after the name. */
  public Phrase what() {
    return what;
  }
}
