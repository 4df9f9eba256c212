package org.lehrcase.bench.opening;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.store.PlaceTable.CardPlace;
import org.lehrcase.bench.store.PositionTable.Position;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;

/**
 * Every way in which the five traits of a laptop stay, change or vanish: 3^5 = 243 machines open
 * one copied home, with a cheap secret; the cost that ships is tried elsewhere.
 */
class TraitPatternsTest {
  private static final OtherMachine MINE = OtherMachine.named("mine");

  @TempDir static Path folder;
  private static TinyShop shop;
  private static TinyShop.Packed edition;
  private static License license;
  private static List<CardPlace> places;
  private static int copies;

  @BeforeAll
  static void buyAndStudy() throws Exception {
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/brush"));
    license = shop.sell("Robin Invented");
    try (Bench bench = bench("home", MINE)) {
      bench.courses().bringIn(edition.folder());
      TinyBench.license(bench, shop, license);
      bench.store().positions().keep(new Position(edition.id(), edition.second().id(), 17.5));
      places = bench.store().places().all();
    }
  }

  private static Bench bench(String home, OtherMachine machine) throws Exception {
    return TinyBench.quick(folder.resolve(home), machine, folder.resolve("stick"));
  }

  private static Bench copiedTo(OtherMachine machine) throws Exception {
    String copy = "copy" + copies++;
    TinyBench.copy(folder.resolve("home"), folder.resolve(copy));
    return bench(copy, machine);
  }

  static Stream<String> patterns() {
    List<String> patterns = List.of("");
    for (int slot = 0; slot < 5; slot++) {
      List<String> longer = new ArrayList<>();
      for (String pattern : patterns) {
        longer.addAll(List.of(pattern + "=", pattern + "~", pattern + "-"));
      }
      patterns = longer;
    }
    return patterns.stream();
  }

  /** The rule of the format: any three of five. */
  private static boolean isRecognised(String pattern) {
    return pattern.chars().filter(sign -> sign == '=').count() >= 3;
  }

  private static void assertNothingWasDeleted(Bench bench) throws Exception {
    assertThat(bench.store().places().all()).containsAll(places);
    assertThat(bench.opening().licenses()).extracting(License::id).containsExactly(license.id());
    assertThat(bench.store().positions().of(edition.second().id()).orElseThrow().seconds())
        .isEqualTo(17.5);
  }

  private static boolean opens(Bench bench) throws Exception {
    return bench.courses().open(edition.id()).contents().isPresent();
  }

  @ParameterizedTest(name = "traits {0}")
  @MethodSource("patterns")
  void threeTraitsOfFiveOpenAndFewerShutWithoutDeletingAnything(String pattern) throws Exception {
    boolean recognised = isRecognised(pattern);
    try (Bench bench = copiedTo(MINE.after(pattern))) {
      assertThat(opens(bench)).isEqualTo(recognised);
      assertThat(bench.opening().isShut()).isEqualTo(!recognised);
      assertThat(bench.opening().state(license.id()))
          .isEqualTo(recognised ? LicenseState.ACTIVE : LicenseState.SHUT);
      assertNothingWasDeleted(bench);
    }
  }

  static Stream<String> shutButTelling() {
    return patterns()
        .filter(pattern -> !isRecognised(pattern))
        .filter(pattern -> pattern.chars().filter(sign -> sign == '-').count() <= 1);
  }

  @ParameterizedTest(name = "traits {0}")
  @MethodSource("shutButTelling")
  void aNewLetterForTheSameLicenseOpensAShutBenchWithItsNotes(String pattern) throws Exception {
    try (Bench bench = copiedTo(MINE.after(pattern))) {
      LaptopCard card = bench.opening().card(Optional.of(license.id()));
      assertThat(card.replaces()).contains(places.get(0).answer().orElseThrow().place());
      bench.opening().acceptLetter(shop.answer(card, license.id()).toBytes());
      bench.courses().forgetAll();
      assertThat(opens(bench)).isTrue();
      assertThat(bench.opening().isShut()).isFalse();
      assertNothingWasDeleted(bench);
    }
  }

  /** A card or disk that is plugged in late; the program has been shut for a while already. */
  @Test
  void aTraitThatComesBackWhileTheProgramRunsOpensIt() throws Exception {
    List<OtherMachine> now = new ArrayList<>(List.of(MINE.after("==---")));
    TinyBench.copy(folder.resolve("home"), folder.resolve("late"));
    try (Bench bench =
        TinyBench.quick(folder.resolve("late"), () -> now.get(0).read(), folder.resolve("stick"))) {
      assertThat(opens(bench)).isFalse();
      assertThat(opens(bench)).isFalse();
      now.set(0, MINE.after("==--="));
      assertThat(opens(bench)).isTrue();
      assertThat(bench.opening().isShut()).isFalse();
    }
  }

  @Test
  void theOldMachineOpensItsOwnHomeWhateverHappenedToACopy() throws Exception {
    Path copy = folder.resolve("copy" + copies);
    try (Bench thief = copiedTo(OtherMachine.named("thief"))) {
      assertThat(thief.opening().card(Optional.of(license.id())).toBytes()).isNotEmpty();
      assertThat(opens(thief)).isFalse();
    }
    try (Bench back = TinyBench.quick(copy, MINE, folder.resolve("stick"))) {
      assertThat(opens(back)).isTrue();
    }
  }
}
