package org.lehrcase.core.course;

/**
 * What a chapter says should open, before it is known which file that is.
 *
 * @param target kind of thing
 * @param label number of the page or template, name of the list or picture; may be empty
 */
public record MomentHint(MomentTarget target, String label) {

  /** Returns the label as a page number from 1 to 9999; 0 if it is none. */
  public int page() {
    return label.matches("[1-9]\\d{0,3}") ? Integer.parseInt(label) : 0;
  }
}
