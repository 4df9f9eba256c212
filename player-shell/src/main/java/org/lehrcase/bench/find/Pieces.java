package org.lehrcase.bench.find;

import java.util.ArrayList;
import java.util.List;

/** Cuts a long text at the ends of sentences or words into pieces that are read at one look. */
public final class Pieces {
  private static final int LONGEST = 500;
  private static final int SHORTEST = 250;

  private Pieces() {}

  /**
   * Cuts a text.
   *
   * @param text the text
   * @return its pieces in order, white space tidied; at least one
   */
  public static List<String> of(String text) {
    List<String> pieces = new ArrayList<>();
    String rest = text.replaceAll("\\s+", " ").strip();
    while (rest.length() > LONGEST) {
      int cut = cut(rest);
      pieces.add(rest.substring(0, cut).strip());
      rest = rest.substring(cut).strip();
    }
    pieces.add(rest);
    return pieces;
  }

  private static int cut(String text) {
    int sentence = text.lastIndexOf(". ", LONGEST);
    if (sentence >= SHORTEST) {
      return sentence + 1;
    }
    int word = text.lastIndexOf(' ', LONGEST);
    return word >= SHORTEST ? word : LONGEST;
  }
}
