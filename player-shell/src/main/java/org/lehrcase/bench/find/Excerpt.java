package org.lehrcase.bench.find;

import java.util.ArrayList;
import java.util.List;

/** The piece of a text that shows what was found in it. */
final class Excerpt {
  private static final int WIDTH = 180;
  private static final int LEAD = 50;

  private Excerpt() {}

  /**
   * Cuts the piece out.
   *
   * @param text the text
   * @param found found words in order; may be empty
   * @return plain and found parts in turn, beginning with a plain one
   */
  static List<String> of(String text, List<Token> found) {
    int from = found.isEmpty() || text.length() <= WIDTH ? 0 : start(text, found.get(0).from());
    int to = text.length() <= from + WIDTH ? text.length() : end(text, from + WIDTH);
    List<String> parts = new ArrayList<>();
    StringBuilder plain = new StringBuilder(from > 0 ? "… " : "");
    int at = from;
    for (Token token : found) {
      if (token.from() >= at && token.to() <= to) {
        parts.add(plain + tidy(text.substring(at, token.from())));
        parts.add(text.substring(token.from(), token.to()));
        plain.setLength(0);
        at = token.to();
      }
    }
    parts.add(plain + tidy(text.substring(at, to)) + (to < text.length() ? " …" : ""));
    return parts;
  }

  private static String tidy(String text) {
    return text.indexOf('\n') < 0 ? text : text.replaceAll("\\s+", " ");
  }

  /** The beginning of a word a little before the first find. */
  private static int start(String text, int first) {
    int from = Math.max(0, first - LEAD);
    while (from > 0 && from < first && !Character.isWhitespace(text.charAt(from - 1))) {
      from++;
    }
    return from;
  }

  private static int end(String text, int near) {
    int to = near;
    while (to > near - LEAD && !Character.isWhitespace(text.charAt(to))) {
      to--;
    }
    return Character.isLowSurrogate(text.charAt(to)) ? to - 1 : to;
  }
}
