package org.lehrcase.bench.find;

import java.util.List;
import java.util.Set;

/** Tells German from other texts by the small words that every sentence needs. */
final class Tongue {
  private static final Set<String> GERMAN =
      Set.of(
          "der", "die", "das", "und", "nicht", "ist", "mit", "ein", "eine", "den", "dem", "auf",
          "zu", "wird", "sich", "bei", "wir", "auch", "noch", "dann");
  private static final Set<String> ENGLISH =
      Set.of(
          "the", "and", "of", "to", "is", "with", "a", "it", "that", "on", "for", "you", "this",
          "then", "we", "at", "not", "be", "are", "but");

  private int german;
  private int english;
  private int words;

  /** Says whether every sentence may have this word. */
  static boolean isSmall(String word) {
    return GERMAN.contains(word) || ENGLISH.contains(word);
  }

  void hear(List<Token> tokens) {
    for (Token token : tokens) {
      words++;
      german += GERMAN.contains(token.word()) ? 1 : 0;
      english += ENGLISH.contains(token.word()) ? 1 : 0;
    }
  }

  /** Says whether there are too few words to tell. */
  boolean isShort() {
    return words < 40;
  }

  boolean isGerman() {
    return german > english;
  }
}
