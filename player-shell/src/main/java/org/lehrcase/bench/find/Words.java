package org.lehrcase.bench.find;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * Cuts a text into the words that are compared. Accents and case are forgiven; figures keep their
 * decimals, "1,5" as "1.5"; figures and units are words of their own, as in "6mm".
 */
final class Words {
  /** Longer words are cut: no language has them, and a hostile text may. */
  static final int MAX_WORD_CHARS = 60;

  /** What English hangs on a word with an apostrophe. */
  private static final Set<String> TAILS = Set.of("s", "t", "ll", "re", "ve", "d", "m");

  private final String text;
  private final List<Token> tokens = new ArrayList<>();
  private int at;

  private Words(String text) {
    this.text = text;
  }

  /** Returns the words of a text in order. */
  static List<Token> of(String text) {
    Words words = new Words(text);
    words.run();
    return words.tokens;
  }

  /** Returns a word in the form that is compared. */
  static String folded(String word) {
    if (isPlain(word)) {
      return cut(word.toLowerCase(Locale.ROOT));
    }
    String bare = Normalizer.normalize(word, Normalizer.Form.NFKD).replaceAll("\\p{M}+", "");
    String lower =
        bare.toLowerCase(Locale.ROOT)
            .replace("ß", "ss")
            .replace("æ", "ae")
            .replace("œ", "oe")
            .replace("ø", "o")
            .replace("ł", "l")
            .replace("ı", "i");
    return cut(lower.replaceAll("[^\\p{L}\\p{Nd}.]+", ""));
  }

  private static String cut(String word) {
    return word.length() > MAX_WORD_CHARS ? word.substring(0, MAX_WORD_CHARS) : word;
  }

  private static boolean isPlain(String word) {
    for (int i = 0; i < word.length(); i++) {
      if (word.charAt(i) > 127) {
        return false;
      }
    }
    return true;
  }

  private void run() {
    while (at < text.length()) {
      int c = text.codePointAt(at);
      if (Character.isDigit(c)) {
        take(figureEnd());
      } else if (Character.isLetter(c)) {
        take(wordEnd());
      } else {
        at += Character.charCount(c);
      }
    }
  }

  private void take(int end) {
    String raw = text.substring(at, end);
    String word = Character.isDigit(raw.codePointAt(0)) ? figure(raw) : folded(raw);
    boolean tail = at > 1 && isApostrophe(text.charAt(at - 1)) && TAILS.contains(word);
    if (!word.isEmpty() && !(tail && Character.isLetter(text.charAt(at - 2)))) {
      tokens.add(new Token(word, at, end));
    }
    at = end;
  }

  private static String figure(String raw) {
    return folded(raw).replace(',', '.');
  }

  private static boolean isApostrophe(char c) {
    return c == '\'' || c == '’';
  }

  private int wordEnd() {
    int end = at;
    while (end < text.length()) {
      int c = text.codePointAt(end);
      if (!Character.isLetter(c) && Character.getType(c) != Character.NON_SPACING_MARK) {
        break;
      }
      end += Character.charCount(c);
    }
    return end;
  }

  private int figureEnd() {
    int end = at;
    while (end < text.length()) {
      char c = text.charAt(end);
      boolean point =
          (c == '.' || c == ',')
              && end + 1 < text.length()
              && Character.isDigit(text.charAt(end + 1));
      if (!Character.isDigit(text.codePointAt(end)) && !point) {
        break;
      }
      end += point ? 1 : Character.charCount(text.codePointAt(end));
    }
    return end;
  }
}
