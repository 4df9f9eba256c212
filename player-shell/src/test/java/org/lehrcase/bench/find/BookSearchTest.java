package org.lehrcase.bench.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A book of 208,000 words, whose answers anybody can look up: see {@link Texts#book()}. */
class BookSearchTest {
  private static List<Passage> passages;
  private static SearchImage image;

  @BeforeAll
  static void open() throws Exception {
    passages = Texts.bookAsCourse();
    image = Texts.image(passages);
  }

  @AfterAll
  static void close() {
    image.close();
  }

  private static List<Hit> ask(String typed) throws Exception {
    return image.ask(Question.of(typed, Set.of()));
  }

  @ParameterizedTest(name = "{0}: chapter {1}")
  @CsvSource({
    "call me ishmael, 1",
    "call me ishmeal, 1",
    "loomings, 1",
    "grin and bear it, 1",
    "damp drizzly november, 1",
    "drizly novembers, 1",
    "the spouter inn, 3",
    "better sleep with a sober cannibal, 3",
    "cetology, 32",
    "doubloon, 99",
    "doubloons gold, 99",
    "the whiteness of the whale, 42",
    "candles, 119",
    "ego non baptizo te, 113",
    "great shroud of the sea rolled, 135",
    "hearts heart grapple with thee, 135",
    "towards thee i roll, 135",
    "queequeg coffin, 110",
    "hast seen the white whale, 100",
  })
  void aKnownPassageIsAmongTheFirstThree(String typed, int chapter) throws Exception {
    assertThat(ask(typed).stream().limit(3))
        .extracting(h -> h.passage().spot().lesson().orElseThrow())
        .contains(Texts.lesson(chapter));
  }

  @Test
  void aChaptersNameIsTheFirstAnswerToIt() throws Exception {
    int first = 0;
    int asked = 0;
    for (Passage passage : passages) {
      if (passage.kind() == PassageKind.LESSON) {
        String name = passage.text().replaceFirst("^CHAPTER \\d+\\. ", "");
        List<Hit> hits = ask(name);
        asked++;
        first += !hits.isEmpty() && isNamed(hits.get(0), name) ? 1 : 0;
      }
    }
    assertThat(asked).isEqualTo(135);
    assertThat(first).as("chapters found first by their names").isGreaterThanOrEqualTo(132);
  }

  /** "The Pequod Meets the Virgin" and others differ little; two chapters share a name or more. */
  private static boolean isNamed(Hit hit, String name) {
    return hit.passage().kind() == PassageKind.LESSON && hit.passage().text().endsWith(name);
  }

  @Test
  void threeWordsThatStandTogetherFindTheirPlaceInTheBook() throws Exception {
    SplittableRandom random = new SplittableRandom(7);
    List<String> lost = new ArrayList<>();
    int firsts = 0;
    int asked = 0;
    while (asked < 400) {
      Passage passage = passages.get(random.nextInt(passages.size()));
      List<Token> words = Words.of(passage.text());
      if (passage.kind() != PassageKind.CAPTION || words.size() < 6) {
        continue;
      }
      int at = random.nextInt(words.size() - 3);
      String typed = passage.text().substring(words.get(at).from(), words.get(at + 2).to());
      if (Question.of(typed, Set.of()).words().size() < 3) {
        continue;
      }
      asked++;
      List<Passage> found = ask(typed).stream().map(Hit::passage).toList();
      if (!found.contains(passage)) {
        lost.add(typed);
      }
      firsts += !found.isEmpty() && found.get(0).text().contains(typed) ? 1 : 0;
    }
    assertThat(lost).as("not found at all").hasSizeLessThanOrEqualTo(4);
    assertThat(firsts).as("the very words come first").isGreaterThanOrEqualTo(390);
  }

  @Test
  void aSlipInALongWordIsForgiven() throws Exception {
    SplittableRandom random = new SplittableRandom(11);
    int found = 0;
    int asked = 0;
    while (asked < 300) {
      Passage passage = passages.get(random.nextInt(passages.size()));
      List<Token> words = Words.of(passage.text());
      Token word = words.get(random.nextInt(words.size()));
      if (word.word().length() < 7) {
        continue;
      }
      asked++;
      int at = 1 + random.nextInt(word.word().length() - 2);
      String slipped = word.word().substring(0, at) + word.word().substring(at + 1);
      found +=
          ask(slipped).stream()
                  .anyMatch(
                      h ->
                          Words.of(h.passage().text()).stream()
                              .anyMatch(t -> t.word().equals(word.word())))
              ? 1
              : 0;
    }
    assertThat(found).as("words with a letter left out").isGreaterThanOrEqualTo(285);
  }
}
