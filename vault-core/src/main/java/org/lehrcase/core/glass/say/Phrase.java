package org.lehrcase.core.glass.say;

import java.util.List;

/**
 * A sentence with figures in it.
 *
 * @param words the sentence, with {@code {}} where a figure stands
 * @param figures its figures, in order
 */
public record Phrase(String words, List<Figure> figures) {
  private static final String HOLE = "{}";

  /**
   * Copies the figures and counts the places.
   *
   * @throws IllegalArgumentException if there are more or fewer figures than places
   */
  public Phrase {
    figures = List.copyOf(figures);
    int holes = 0;
    for (int at = words.indexOf(HOLE); at >= 0; at = words.indexOf(HOLE, at + HOLE.length())) {
      holes++;
    }
    if (holes != figures.size()) {
      throw new IllegalArgumentException("not a figure for each place: " + words);
    }
  }

  /** Makes a sentence. */
  public static Phrase of(String words, Figure... figures) {
    return new Phrase(words, List.of(figures));
  }

  /** Makes a sentence of words that may hold anything, such as a name that somebody typed. */
  public static Phrase plain(String words) {
    return new Phrase(words.replace(HOLE, "{ }"), List.of());
  }

  /** Returns this sentence with other words before and behind it. */
  public Phrase between(String before, String behind) {
    return new Phrase(before + words + behind, figures);
  }

  /** Returns the sentence in somebody's units. */
  public String in(Units units) {
    var text = new StringBuilder();
    int from = 0;
    for (Figure figure : figures) {
      int hole = words.indexOf(HOLE, from);
      text.append(words, from, hole).append(figure.in(units));
      from = hole + HOLE.length();
    }
    return text.append(words, from, words.length()).toString();
  }

  /** Returns the sentence in °C and mm. */
  public String text() {
    return in(Units.METRIC);
  }
}
