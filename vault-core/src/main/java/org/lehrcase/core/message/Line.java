package org.lehrcase.core.message;

import java.text.Normalizer;
import org.lehrcase.core.VaultException;

/**
 * What a name or title may be: one line in Unicode form NFC, not blank, without control, format or
 * direction characters, so that it cannot disguise itself or change what stands around it.
 */
public final class Line {
  /** The usual limit for names, in characters (UTF-16 units). */
  public static final int NAME_CHARS = 100;

  private Line() {}

  /**
   * Checks text that came from outside.
   *
   * @param text the text
   * @param maxChars the most characters that are allowed
   * @return the same text
   * @throws VaultException if a rule is broken
   */
  public static String require(String text, int maxChars) throws VaultException {
    if (text.length() > maxChars) {
      throw new VaultException.TooLarge(
          "a line of " + text.length() + " characters, the limit is " + maxChars);
    }
    if (!isClean(text)) {
      throw new VaultException.Malformed("a name or title holds characters that are not allowed");
    }
    return text;
  }

  /**
   * Says whether text keeps the rules, for forms that help a person to keep them.
   *
   * @param text the text
   * @return whether it is one clean line
   */
  public static boolean isClean(String text) {
    return !text.isBlank()
        && Normalizer.isNormalized(text, Normalizer.Form.NFC)
        && text.codePoints().allMatch(Line::isAllowed);
  }

  private static boolean isAllowed(int codePoint) {
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.UNASSIGNED ->
          false;
      default -> true;
    };
  }
}
