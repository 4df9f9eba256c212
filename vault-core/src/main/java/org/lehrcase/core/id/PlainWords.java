package org.lehrcase.core.id;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * A list of 1,024 short English words, for telling a hash by eye and for proposed passphrases: each
 * word stands for ten bits. The list never changes, since people compare words between programs.
 */
public final class PlainWords {
  /** How many words the list has. */
  public static final int COUNT = 1024;

  private static final int BITS = 10;
  private static final int MAX_BYTES = 16_384;
  private static final List<String> LIST = load();

  private PlainWords() {}

  /**
   * Returns one word.
   *
   * @param index 0 to 1,023
   * @return lower-case letters only
   */
  public static String at(int index) {
    return LIST.get(index);
  }

  /**
   * Says the first bits of a hash in words.
   *
   * @param hash public octets, at least ten bits for each word
   * @param count how many words
   * @return the words, most significant bits first
   * @throws IllegalArgumentException if the hash is too short
   */
  public static List<String> of(Octets hash, int count) {
    if (hash.size() * 8 < count * BITS) {
      throw new IllegalArgumentException(count + " words need " + count * BITS + " bits");
    }
    byte[] bytes = hash.toBytes();
    List<String> words = new ArrayList<>();
    for (int word = 0; word < count; word++) {
      int index = 0;
      for (int bit = word * BITS; bit < (word + 1) * BITS; bit++) {
        index = index << 1 | bytes[bit / 8] >> (7 - bit % 8) & 1;
      }
      words.add(LIST.get(index));
    }
    return List.copyOf(words);
  }

  private static List<String> load() {
    try (InputStream in = PlainWords.class.getResourceAsStream("words.txt")) {
      if (in == null) {
        throw new IllegalStateException("this build lacks words.txt");
      }
      return new String(in.readNBytes(MAX_BYTES), StandardCharsets.US_ASCII).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
