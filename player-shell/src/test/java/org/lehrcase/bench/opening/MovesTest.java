package org.lehrcase.bench.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.Dropped.Outcome;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.License;
import org.lehrcase.core.license.MessageText;
import org.lehrcase.core.license.MoveAsk;

/**
 * A place goes from laptop to laptop: exactly one has it, at every step and after every restart.
 */
class MovesTest {
  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;
  private License license;
  private KeyLetter letter;

  @BeforeEach
  void anOldLaptopStudies() throws Exception {
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/brush"));
    license = shop.sell("Robin Invented");
    try (Bench old = bench("old")) {
      old.courses().bringIn(edition.folder());
      letter = TinyBench.license(old, shop, license);
      assertThat(opens(old)).isTrue();
    }
  }

  private Bench bench(String name) throws Exception {
    return TinyBench.quick(folder.resolve(name), OtherMachine.named(name), folder.resolve("stick"));
  }

  private boolean opens(Bench bench) throws Exception {
    bench.courses().forgetAll();
    return bench.courses().open(edition.id()).contents().isPresent();
  }

  private static Dropped drop(Bench bench, String text) throws Exception {
    return bench.dropPlace().take(text.getBytes(StandardCharsets.UTF_8));
  }

  private MoveAsk asked(String name) throws Exception {
    try (Bench bench = bench(name)) {
      bench.courses().bringIn(edition.folder());
      return bench.opening().moves().ask();
    }
  }

  private String passed(String from, MoveAsk ask) throws Exception {
    try (Bench bench = bench(from)) {
      return bench.opening().moves().pass(ask, license.id());
    }
  }

  private void arrives(String at, String text) throws Exception {
    try (Bench bench = bench(at)) {
      assertThat(drop(bench, text).outcome()).isEqualTo(Outcome.ACCEPTED);
      assertThat(opens(bench)).isTrue();
    }
  }

  @Test
  void theNewLaptopOpensAndTheOldOneDoesNot() throws Exception {
    MoveAsk ask = asked("new");
    String text = passed("old", ask);
    try (Bench old = bench("old")) {
      assertThat(opens(old)).isFalse();
      assertThat(old.opening().state(license.id())).isEqualTo(LicenseState.PASSED);
    }
    arrives("new", text);
    try (Bench again = bench("new")) {
      assertThat(opens(again)).isTrue();
      assertThat(drop(again, text).outcome()).isEqualTo(Outcome.KNOWN);
    }
  }

  @Test
  void theAskStaysTheSameAndSoDoesTheAnswer() throws Exception {
    MoveAsk ask = asked("new");
    assertThat(asked("new").toBytes()).isEqualTo(ask.toBytes());
    String text = passed("old", ask);
    assertThat(passed("old", ask)).isEqualTo(text);
    try (Bench old = bench("old")) {
      assertThat(old.opening().moves().passed(license.id())).contains(text);
    }
  }

  @Test
  void theLetterOpensNothingOnTheOldLaptopAgain() throws Exception {
    passed("old", asked("new"));
    try (Bench old = bench("old")) {
      String again = MessageText.of(letter);
      assertThatThrownBy(() -> drop(old, again)).isInstanceOf(VaultException.class);
      assertThat(opens(old)).isFalse();
    }
  }

  @Test
  void aSecondLaptopGetsNothing() throws Exception {
    passed("old", asked("new"));
    MoveAsk other = asked("third");
    assertThatThrownBy(() -> passed("old", other)).isInstanceOf(Trouble.class);
  }

  @Test
  void anotherLaptopCannotTakeTheFile() throws Exception {
    String text = passed("old", asked("new"));
    asked("third");
    try (Bench third = bench("third")) {
      assertThatThrownBy(() -> drop(third, text)).isInstanceOf(VaultException.WrongLaptop.class);
      assertThat(opens(third)).isFalse();
    }
    arrives("new", text);
  }

  @Test
  void aPlaceMovesOnUntilItsMovesAreUsedUp() throws Exception {
    String from = "old";
    int moves = letter.grant().moves();
    for (int hop = 1; hop <= moves; hop++) {
      String to = "laptop " + hop;
      arrives(to, passed(from, asked(to)));
      from = to;
    }
    String last = from;
    MoveAsk more = asked("one more");
    assertThatThrownBy(() -> passed(last, more))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("as often as");
    try (Bench bench = bench(last)) {
      assertThat(opens(bench)).isTrue();
    }
  }

  @Test
  void aLinkAloneIsToldAndTakesNothing() throws Exception {
    String text = passed("old", asked("new"));
    try (Bench bench = bench("new")) {
      String link = text.substring(text.indexOf("-----BEGIN LEHRCASE MOVE LINK-----"));
      assertThat(drop(bench, link).outcome()).isEqualTo(Outcome.REFUSED);
      assertThat(opens(bench)).isFalse();
    }
  }

  @Test
  void aChangedOrShortenedFileTakesNothing() throws Exception {
    String text = passed("old", asked("new"));
    int link = text.indexOf("-----BEGIN LEHRCASE MOVE LINK-----");
    String[] bad = {
      text.substring(0, link) + text.substring(link).replaceFirst("[A-Z][a-z]", "Zz"),
      text.replace("LAPTOP CARD", "KEY LETTER")
    };
    try (Bench bench = bench("new")) {
      for (String one : bad) {
        assertThatThrownBy(() -> drop(bench, one)).isInstanceOf(VaultException.class);
        assertThat(opens(bench)).isFalse();
      }
    }
    arrives("new", text);
  }
}
