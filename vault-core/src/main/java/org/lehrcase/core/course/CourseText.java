package org.lehrcase.core.course;

import java.text.Normalizer;
import java.util.regex.Pattern;
import org.lehrcase.core.message.Line;

/**
 * The rules for text that a person reads on a page and that came from somebody else's file.
 *
 * <p>A name is at most {@value #MAX_NAME} UTF-16 units of what {@link Line} allows; the longer
 * texts here keep the same rule, with line feeds where a paragraph may have them.
 */
public final class CourseText {

  /** Most characters of a name or a title. */
  public static final int MAX_NAME = Line.NAME_CHARS;

  /** Most characters of a summary, a description or a correction. */
  public static final int MAX_PARAGRAPH = 4000;

  private static final Pattern SERIES = Pattern.compile("[a-z0-9]([a-z0-9-]{0,30}[a-z0-9])?");

  private CourseText() {}

  /**
   * Gives the text back if it may stand as a name.
   *
   * @throws IllegalArgumentException if it is blank, too long, not in form C, or holds a character
   *     that a name must not have
   */
  public static String name(String text) {
    if (text.isBlank()) {
      throw new IllegalArgumentException("a name is empty");
    }
    return line(text, MAX_NAME);
  }

  /**
   * Gives the text back if it may stand on one line; it may be empty.
   *
   * @param maxCharacters most UTF-16 units
   * @throws IllegalArgumentException if it is too long or holds a forbidden character
   */
  public static String line(String text, int maxCharacters) {
    return checked(text, maxCharacters, false);
  }

  /**
   * Gives the text back if it may stand as a paragraph: the rules of a name, but line feeds are
   * welcome, it may be empty, and it may have {@value #MAX_PARAGRAPH} characters.
   *
   * @throws IllegalArgumentException if it is too long or holds a forbidden character
   */
  public static String paragraph(String text) {
    return checked(text, MAX_PARAGRAPH, true);
  }

  /**
   * Gives the text back if it is a series id: 1 to 32 of {@code a-z}, {@code 0-9} and hyphens
   * inside.
   *
   * @throws IllegalArgumentException if it has any other shape
   */
  public static String seriesId(String text) {
    if (!SERIES.matcher(text).matches()) {
      throw new IllegalArgumentException(
          "a series id has 1 to 32 of a-z, 0-9 and hyphens inside, for example: brush");
    }
    return text;
  }

  /**
   * Makes text that a teacher typed fit for {@link #name}: form C, forbidden characters and line
   * breaks become spaces, runs of spaces become one, and what is too long is cut.
   *
   * @return the cleaned text; blank if nothing was left
   */
  public static String tidied(String text) {
    var clean = new StringBuilder(text.length());
    Normalizer.normalize(text, Normalizer.Form.NFC)
        .codePoints()
        .map(c -> !Line.mayHold(c) || Character.isWhitespace(c) ? ' ' : c)
        .forEach(clean::appendCodePoint);
    String spaced = clean.toString().replaceAll(" {2,}", " ").strip();
    if (spaced.length() <= MAX_NAME) {
      return spaced;
    }
    boolean splitsPair = Character.isHighSurrogate(spaced.charAt(MAX_NAME - 1));
    return spaced.substring(0, splitsPair ? MAX_NAME - 1 : MAX_NAME).strip();
  }

  private static String checked(String text, int maxCharacters, boolean lineFeeds) {
    if (text.length() > maxCharacters) {
      throw new IllegalArgumentException("a text is longer than " + maxCharacters + " characters");
    }
    if (!text.codePoints().allMatch(c -> Line.mayHold(c) || lineFeeds && c == '\n')) {
      throw new IllegalArgumentException("a text holds a control or format character");
    }
    if (!Line.isComposed(text)) {
      throw new IllegalArgumentException("a text is not in Unicode form C");
    }
    return text;
  }
}
