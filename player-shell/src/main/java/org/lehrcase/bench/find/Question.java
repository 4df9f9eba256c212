package org.lehrcase.bench.find;

import java.util.List;
import java.util.Set;

/**
 * What a person typed.
 *
 * @param words the words that are looked for, folded; at most {@value #MAX_WORDS}
 * @param typing whether the last word may not be finished
 * @param kinds kinds to look among; empty for all
 */
public record Question(List<String> words, boolean typing, Set<PassageKind.Group> kinds) {
  /** Most characters of a question that are read. */
  public static final int MAX_CHARS = 200;

  /** Most words of a question that are looked for. */
  public static final int MAX_WORDS = 8;

  /** Copies the collections. */
  public Question {
    words = List.copyOf(words);
    kinds = Set.copyOf(kinds);
  }

  /**
   * Reads what was typed. Any text is a question; signs are passed over.
   *
   * @param typed the text
   * @param kinds kinds to look among; empty for all
   * @return the question, perhaps without a word
   */
  public static Question of(String typed, Set<PassageKind.Group> kinds) {
    String read = typed.length() > MAX_CHARS ? typed.substring(0, MAX_CHARS) : typed;
    List<Token> tokens = Words.of(read);
    boolean open = !tokens.isEmpty() && tokens.get(tokens.size() - 1).to() == read.length();
    List<String> words = tokens.stream().map(Token::word).distinct().limit(MAX_WORDS).toList();
    List<String> telling = words.stream().filter(w -> tells(w, words, open)).toList();
    return new Question(telling.isEmpty() ? words : telling, open, kinds);
  }

  /** Small words say nothing beside others, but what is being typed may become another word. */
  private static boolean tells(String word, List<String> words, boolean open) {
    boolean last = word.equals(words.get(words.size() - 1));
    return (open && last) || !Tongue.isSmall(word);
  }
}
