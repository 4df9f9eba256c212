package org.lehrcase.core.course;

/**
 * One caption.
 *
 * @param startMillis when it appears, milliseconds from the start of the video
 * @param endMillis when it goes
 * @param markup text in the markup of WebVTT: lines, escapes, and the tags that it allows
 */
public record Cue(long startMillis, long endMillis, String markup) {

  /** Returns the text without tags and with its escapes resolved, lines kept. */
  public String plain() {
    return CueMarkup.plain(markup);
  }
}
