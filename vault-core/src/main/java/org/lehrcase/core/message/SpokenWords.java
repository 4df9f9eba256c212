package org.lehrcase.core.message;

import java.util.ArrayList;
import java.util.List;

/**
 * Bits as words that can be read aloud and compared: 16 bits make one word of the form
 * consonant-vowel-consonant-vowel-consonant (the published "proquint" spelling), in no language and
 * without a word list.
 */
public final class SpokenWords {
  /** Bytes that make one word. */
  public static final int BYTES_PER_WORD = 2;

  private static final String CONSONANTS = "bdfghjklmnprstvz";
  private static final String VOWELS = "aiou";

  private SpokenWords() {}

  /**
   * Spells bytes.
   *
   * @param bytes at least twice as many bytes as words
   * @param count how many words
   * @return the words, lower-case, five letters each
   */
  public static List<String> of(byte[] bytes, int count) {
    List<String> words = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      int at = BYTES_PER_WORD * i;
      words.add(word((bytes[at] & 0xff) << 8 | bytes[at + 1] & 0xff));
    }
    return List.copyOf(words);
  }

  private static String word(int bits) {
    char[] letters = {
      CONSONANTS.charAt(bits >>> 12 & 15),
      VOWELS.charAt(bits >>> 10 & 3),
      CONSONANTS.charAt(bits >>> 6 & 15),
      VOWELS.charAt(bits >>> 4 & 3),
      CONSONANTS.charAt(bits & 15),
    };
    return new String(letters);
  }
}
