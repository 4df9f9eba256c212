package org.lehrcase.bench.find;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Every word of an image, and which of them a typed word may have meant. */
final class Vocabulary {
  private static final int MAX_WORDS = 400_000;

  /** Fewer letters stand inside too many words. */
  private static final int INSIDE_CHARS = 4;

  private static final int MAX_GUESSES = 24;

  private final String[] words;
  private final String[] germans;
  private final String[] keys;

  private Vocabulary(List<String> words, List<String> germans) {
    this.words = words.toArray(String[]::new);
    this.germans = germans.toArray(String[]::new);
    this.keys = words.stream().map(Vocabulary::key).toArray(String[]::new);
  }

  /** The words of an image that is being made. */
  static final class Draft {
    private final Map<String, boolean[]> seen = new TreeMap<>();

    /** Takes in the words of a text. */
    void add(List<Token> tokens, boolean german) {
      for (Token token : tokens) {
        seen.computeIfAbsent(token.word(), w -> new boolean[2])[german ? 1 : 0] = true;
      }
    }

    void write(Connection connection) throws SQLException {
      try (PreparedStatement word =
              connection.prepareStatement("INSERT INTO word(id, word, german) VALUES(?,?,?)");
          PreparedStatement form =
              connection.prepareStatement("INSERT INTO forms(rowid, word) VALUES(?,?)")) {
        int id = 0;
        for (Map.Entry<String, boolean[]> one : seen.entrySet()) {
          id++;
          word.setInt(1, id);
          word.setString(2, one.getKey());
          word.setString(3, one.getValue()[1] ? GermanStem.of(one.getKey()) : "");
          word.execute();
          if (one.getValue()[0]) {
            form.setInt(1, id);
            form.setString(2, one.getKey());
            form.execute();
          }
        }
      }
    }
  }

  static Vocabulary load(Connection connection) throws SQLException {
    List<String> words = new ArrayList<>();
    List<String> germans = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet rows =
            statement.executeQuery(
                "SELECT word, german FROM word ORDER BY id LIMIT " + MAX_WORDS)) {
      while (rows.next()) {
        words.add(rows.getString(1));
        germans.add(rows.getString(2));
      }
    }
    return new Vocabulary(words, germans);
  }

  /**
   * Finds what a word may have meant.
   *
   * @param typed the folded word
   * @param typing whether the person may still be typing it
   * @param english words of the same English stem
   */
  Meant meant(String typed, boolean typing, List<String> english) {
    Meant meant = new Meant(typed);
    english.forEach(meant::form);
    String key = key(typed);
    String german = GermanStem.of(typed);
    for (int i = 0; i < words.length; i++) {
      if (keys[i].equals(key) || germans[i].equals(german)) {
        meant.form(words[i]);
      } else if (typed.length() > 1 && words[i].startsWith(typed)) {
        meant.begins();
      } else if (typed.length() >= INSIDE_CHARS && words[i].contains(typed)) {
        meant.guess(words[i], MAX_GUESSES);
      }
    }
    if (meant.isNothing() && typed.length() >= INSIDE_CHARS) {
      slips(meant, typing);
    }
    return meant;
  }

  private void slips(Meant meant, boolean typing) {
    String typed = meant.typed();
    for (String word : words) {
      boolean begun = typing && word.length() > typed.length();
      if (OneSlip.between(typed, word)
          || (begun && OneSlip.between(typed, word.substring(0, typed.length())))) {
        meant.guess(word, MAX_GUESSES);
      }
    }
  }

  /** German umlauts are typed as two letters where the keyboard has none. */
  private static String key(String word) {
    return word.indexOf('e') < 0
        ? word
        : word.replace("ae", "a").replace("oe", "o").replace("ue", "u");
  }
}
