package org.lehrcase.bench.find;

import java.util.List;

/**
 * A passage that was found.
 *
 * @param passage the passage
 * @param covered how many of the words it has
 * @param score how well it fits among those that have as many
 * @param excerpt its text around the words: parts that stand before, in and behind them in turn, so
 *     that every second part is a found word
 */
public record Hit(Passage passage, int covered, double score, List<String> excerpt) {
  /** Copies the list. */
  public Hit {
    excerpt = List.copyOf(excerpt);
  }
}
