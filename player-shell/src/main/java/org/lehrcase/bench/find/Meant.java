package org.lehrcase.bench.find;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a typed word may have meant among the words of an image. */
final class Meant {
  /** How near a found word is to the typed one. */
  static final double SAME = 1;

  private static final double FORM = 0.8;
  private static final double BEGINS = 0.6;
  private static final double GUESS = 0.4;

  private final String typed;
  private final Set<String> forms = new LinkedHashSet<>();
  private final Set<String> guesses = new LinkedHashSet<>();
  private boolean beginning;

  Meant(String typed) {
    this.typed = typed;
  }

  String typed() {
    return typed;
  }

  /** Takes in the word itself, or one of the same stem or another spelling. */
  void form(String word) {
    forms.add(word);
  }

  /** Notes that words begin with it. */
  void begins() {
    beginning = true;
  }

  /** Takes in a compound that holds it, or what it is a slip of. */
  void guess(String word, int most) {
    if (guesses.size() < most) {
      guesses.add(word);
    }
  }

  boolean isNothing() {
    return forms.isEmpty() && guesses.isEmpty() && !beginning;
  }

  boolean hasForms() {
    return !forms.isEmpty();
  }

  /** Says how near a word of a text is to the typed one, from 0 to 1. */
  double nearness(String word) {
    if (word.equals(typed)) {
      return SAME;
    }
    if (forms.contains(word)) {
      return FORM;
    }
    if (word.startsWith(typed)) {
      return BEGINS;
    }
    return guesses.contains(word) ? GUESS : 0;
  }

  /** The word and its forms, as FTS5 reads it; everything is quoted. */
  String strictly() {
    return any(forms.stream().map(Meant::quoted));
  }

  /** All that it may have meant, as FTS5 reads it; everything is quoted. */
  String widely() {
    Stream<String> beginnings = beginning ? Stream.of(quoted(typed) + "*") : Stream.empty();
    return any(
        Stream.concat(
            beginnings, Stream.concat(forms.stream(), guesses.stream()).map(Meant::quoted)));
  }

  private static String any(Stream<String> words) {
    return words.collect(Collectors.joining(" OR ", "(", ")"));
  }

  static String quoted(String word) {
    return '"' + word.replace("\"", "\"\"") + '"';
  }
}
