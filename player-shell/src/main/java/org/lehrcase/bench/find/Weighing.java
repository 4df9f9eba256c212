package org.lehrcase.bench.find;

import java.util.ArrayList;
import java.util.List;

/**
 * How well a passage answers a question: names first, then exact words, then words side by side.
 */
final class Weighing {
  private static final double TITLE = 0.6;
  private static final double SIDE_BY_SIDE = 0.5;

  /** What is only named in the next caption counts a little. */
  private static final double BESIDE = 0.2;

  private static final double OFTEN = 0.05;
  private static final int MANY = 4;

  /** Among equals the order of the course stays. */
  private static final double EARLIER = 0.0001;

  private final List<Meant> words;

  Weighing(List<Meant> words) {
    this.words = words;
  }

  /** Weighs a passage; {@code rank} is its place in the order of the course. */
  Hit weigh(Passage passage, int rank) {
    List<Token> tokens = Words.of(passage.text());
    List<Token> found = new ArrayList<>();
    double[] best = new double[words.size()];
    int last = -2;
    int neighbours = 0;
    for (Token token : tokens) {
      int which = note(token, best);
      if (which >= 0) {
        found.add(token);
        neighbours += which == last + 1 && last >= 0 ? 1 : 0;
      }
      last = which < 0 ? -2 : which;
    }
    int covered = 0;
    double score = passage.kind().isTitle() ? TITLE : 0;
    for (double nearness : best) {
      covered += nearness > 0 ? 1 : 0;
      score += nearness > 0 ? nearness : BESIDE;
    }
    score += SIDE_BY_SIDE * Math.min(neighbours, words.size() - 1);
    score += OFTEN * Math.min(MANY, found.size() - covered);
    return new Hit(passage, covered, score - rank * EARLIER, Excerpt.of(passage.text(), found));
  }

  /** Notes the word that a token stands for, and returns its number, -1 for none. */
  private int note(Token token, double[] best) {
    int which = -1;
    double most = 0;
    for (int i = 0; i < best.length; i++) {
      double nearness = words.get(i).nearness(token.word());
      best[i] = Math.max(best[i], nearness);
      if (nearness > most) {
        most = nearness;
        which = i;
      }
    }
    return which;
  }
}
