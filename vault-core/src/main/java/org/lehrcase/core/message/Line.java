package org.lehrcase.core.message;

import java.text.Normalizer;
import org.lehrcase.core.VaultException;

/**
 * What a name or title may be: one line in Unicode form NFC, not blank, without control, format or
 * direction characters, so that it cannot disguise itself or change what stands around it.
 *
 * <p>Which characters those are is a fixed list, that of {@code docs/format.md}, section 1, and not
 * what the Unicode tables of this machine say: every reader refuses the same names, and a character
 * that Unicode adds later may stand in a name.
 */
public final class Line {
  /** The usual limit for names, in characters (UTF-16 units). */
  public static final int NAME_CHARS = 100;

  /** First and last of each range that may not stand in a line, in order. */
  private static final int[][] FORBIDDEN = {
    {0x0000, 0x001f}, // control
    {0x007f, 0x009f}, // control
    {0x00ad, 0x00ad}, // soft hyphen: not seen
    {0x061c, 0x061c}, // direction
    {0x180e, 0x180e}, // not seen
    {0x200b, 0x200f}, // not seen, joiners, direction
    {0x2028, 0x202e}, // line and paragraph breaks, direction
    {0x2060, 0x206f}, // not seen, direction
    {0xd800, 0xdfff}, // halves of a pair
    {0xfeff, 0xfeff}, // byte-order mark
    {0xfff9, 0xfffb}, // annotations
    {0xe0000, 0xe007f}, // tags: not seen
  };

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
    return !text.isBlank() && isComposed(text) && text.codePoints().allMatch(Line::mayHold);
  }

  /**
   * Says whether text is in the one form that the format allows, Unicode Standard Annex 15 form C.
   *
   * @param text the text
   * @return whether composing it would change nothing
   */
  public static boolean isComposed(String text) {
    return Normalizer.isNormalized(text, Normalizer.Form.NFC);
  }

  /**
   * Says whether a character may stand in a line.
   *
   * @param codePoint the character, or an unpaired surrogate
   * @return whether it is outside the fixed list
   */
  public static boolean mayHold(int codePoint) {
    for (int[] range : FORBIDDEN) {
      if (codePoint <= range[1]) {
        return codePoint < range[0];
      }
    }
    return true;
  }
}
