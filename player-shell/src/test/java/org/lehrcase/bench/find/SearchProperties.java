package org.lehrcase.bench.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Any text is a question and none is an error; every word of a caption leads to its caption. */
class SearchProperties {
  private static final String[] ODD = {
    "\"",
    "'",
    "*",
    "(",
    ")",
    ":",
    "^",
    "-",
    "+",
    "NEAR",
    "NEAR(",
    "AND",
    "OR",
    "NOT",
    "{title}",
    "words",
    "rank",
    "body:",
    ";",
    "--",
    "%",
    "\\",
    "\0",
    "\n",
    "\u202e",
    "\ud83d",
    "🜁",
    "ß",
    "ﬁ",
    "e\u0301",
    "İ",
    "1,5",
    "1.",
    ".5",
    "1.5.2",
    "½",
    "kiln",
    "glass",
    "DROP TABLE word",
    "𝔊𝔩𝔞𝔰",
    "ガラス"
  };

  static LongStream seeds() {
    Long given = Long.getLong("lehrcase.seed");
    SplittableRandom random = new SplittableRandom();
    return given != null
        ? LongStream.of(given)
        : LongStream.generate(() -> random.nextLong(1L << 48)).limit(10);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void anyTextIsAQuestion(long seed) throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    List<Passage> passages = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      passages.add(Texts.cue(1, i * 1000L, odd(random)));
    }
    try (SearchImage image = Texts.image(passages)) {
      for (int i = 0; i < 150; i++) {
        String typed = odd(random);
        for (Hit hit : image.ask(Question.of(typed, Set.of()))) {
          assertThat(hit.passage().spot().at() % 1000).isZero();
          assertThat(hit.excerpt().size() % 2).isOne();
        }
      }
    }
  }

  private static String odd(SplittableRandom random) {
    StringBuilder text = new StringBuilder();
    int parts = random.nextInt(1, 9);
    for (int i = 0; i < parts; i++) {
      boolean any = random.nextInt(4) == 0;
      text.append(
          any ? Character.toString(random.nextInt(0x11000)) : ODD[random.nextInt(ODD.length)]);
      text.append(random.nextBoolean() ? " " : "");
    }
    return text.toString();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void everyWordOfACaptionFindsIt(long seed) throws Exception {
    SplittableRandom random = new SplittableRandom(seed);
    List<Passage> passages = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      passages.add(Texts.cue(1, i * 1000L, odd(random) + " " + word(random) + " " + word(random)));
    }
    try (SearchImage image = Texts.image(passages)) {
      for (Passage passage : passages) {
        for (Token token : Words.of(passage.text())) {
          String typed = passage.text().substring(token.from(), token.to());
          assertThat(image.ask(Question.of(typed, Set.of())))
              .as("\"%s\" of \"%s\"", typed, passage.text())
              .extracting(hit -> hit.passage().spot().at())
              .contains(passage.spot().at());
        }
      }
    }
  }

  private static String word(SplittableRandom random) {
    StringBuilder word = new StringBuilder();
    int letters = random.nextInt(2, 12);
    for (int i = 0; i < letters; i++) {
      word.append("abcdefghijklmnopqrstuvwxyzäöüßéñç".charAt(random.nextInt(33)));
    }
    return word.toString();
  }
}
