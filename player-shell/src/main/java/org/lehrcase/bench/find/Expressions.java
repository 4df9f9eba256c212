package org.lehrcase.bench.find;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What FTS5 is asked, from the narrowest to the widest. Every word stands in quotes, so that
 * nothing that a person types is part of the language of FTS5.
 */
final class Expressions {
  private static final String NAMES = "{title} : ";
  private static final String TEXTS = "{title body} : ";

  /** With the passage that follows, as a sentence may go on there. */
  private static final String NEAR = "{title body beside} : ";

  private static final int GAP = 4;

  private Expressions() {}

  /** Returns the questions for passages that have every word. */
  static List<String> of(List<Meant> words, Set<PassageKind.Group> kinds) {
    List<String> asked = new ArrayList<>();
    if (words.stream().allMatch(Meant::hasForms)) {
      asked.add(joined(words, " AND ", m -> NAMES + m.strictly()));
      if (words.size() > 1) {
        asked.add(sideBySide(words));
      }
      asked.add(joined(words, " AND ", m -> TEXTS + m.strictly()));
    }
    asked.add(joined(words, " AND ", m -> NAMES + m.widely()));
    asked.add(joined(words, " AND ", m -> TEXTS + m.widely()));
    asked.add(joined(words, " AND ", m -> NEAR + m.widely()));
    return asked.stream().map(words1 -> among(kinds, words1)).toList();
  }

  /** Returns the question for passages that have any of the words. */
  static String any(List<Meant> words, Set<PassageKind.Group> kinds) {
    return among(kinds, joined(words, " OR ", m -> TEXTS + m.widely()));
  }

  private static String sideBySide(List<Meant> words) {
    return words.stream()
        .map(m -> Meant.quoted(m.typed()))
        .collect(Collectors.joining(" ", TEXTS + "NEAR(", ", " + GAP + ")"));
  }

  private static String joined(List<Meant> words, String by, Function<Meant, String> each) {
    return words.stream().map(each).collect(Collectors.joining(by));
  }

  private static String among(Set<PassageKind.Group> kinds, String words) {
    return kinds.isEmpty()
        ? words
        : kinds.stream()
            .sorted()
            .map(kind -> Meant.quoted(kind.word()))
            .collect(Collectors.joining(" OR ", "kind : (", ") AND (" + words + ")"));
  }
}
