package org.lehrcase.bench.find;

/**
 * What German words have in common: the algorithm CISTEM of L. Weissweiler and A. Fraser,
 * "Developing a Stemmer for German Based on a Comparative Analysis of Publicly Available Stemmers",
 * GSCL 2017, without its rule for words in capitals, as words come in lower case here.
 */
final class GermanStem {
  private static final int SHORTEST = 3;

  private GermanStem() {}

  /** Returns the stem of a folded word. */
  static String of(String word) {
    if (word.length() <= SHORTEST || Character.isDigit(word.charAt(0))) {
      return word;
    }
    String start = word.startsWith("ge") && word.length() >= 6 ? word.substring(2) : word;
    String marked = doubled(start.replace("sch", "$").replace("ei", "%").replace("ie", "&"));
    return restored(stripped(marked)).replace("%", "ei").replace("&", "ie").replace("$", "sch");
  }

  private static String doubled(String word) {
    StringBuilder marked = new StringBuilder(word);
    for (int i = 1; i < marked.length(); i++) {
      if (marked.charAt(i) == marked.charAt(i - 1)) {
        marked.setCharAt(i, '*');
      }
    }
    return marked.toString();
  }

  private static String stripped(String word) {
    String rest = word;
    while (rest.length() > SHORTEST) {
      int ending = ending(rest);
      if (ending == 0) {
        break;
      }
      rest = rest.substring(0, rest.length() - ending);
    }
    return rest;
  }

  private static int ending(String word) {
    boolean two = word.endsWith("em") || word.endsWith("er") || word.endsWith("nd");
    if (word.length() > 5 && two) {
      return 2;
    }
    return "tesn".indexOf(word.charAt(word.length() - 1)) >= 0 ? 1 : 0;
  }

  private static String restored(String word) {
    StringBuilder whole = new StringBuilder(word);
    for (int i = 1; i < whole.length(); i++) {
      if (whole.charAt(i) == '*') {
        whole.setCharAt(i, whole.charAt(i - 1));
      }
    }
    return whole.toString();
  }
}
