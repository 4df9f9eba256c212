package org.lehrcase.bench.courses;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.copies.EditionFetch;
import org.lehrcase.core.copies.FetchNeed;
import org.lehrcase.core.copies.FetchWish;
import org.lehrcase.core.copies.FolderSource;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;

/** Old clocks, long and foreign names, two people on one laptop: a course opens all the same. */
class BadDaysTest {
  private static final int FILM_BYTES = 300_000;

  @TempDir Path folder;
  private TinyShop shop;

  @BeforeEach
  void openShop() throws Exception {
    shop = new TinyShop();
  }

  private static void assertPlays(Bench bench, TinyShop.Packed edition) throws Exception {
    var clear = bench.courses().file(edition.id(), edition.file(AssetRole.VIDEO).id()).clear();
    ByteBuffer all = ByteBuffer.allocate(FILM_BYTES);
    while (all.hasRemaining()) {
      clear.readAt(all.position(), all);
    }
    assertThat(all.array()).isEqualTo(TinyShop.film(3, FILM_BYTES));
  }

  private Bench owning(Path home, TinyShop.Packed edition) throws Exception {
    Bench bench = TinyBench.quick(home, OtherMachine.named("mine"), edition.folder().getParent());
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, shop, shop.sell("Zoë Invented"));
    return bench;
  }

  /** A laptop whose battery was flat: older than every day that is signed anywhere. */
  @Test
  void aClockOf1999ChangesNothing() throws Exception {
    TinyShop.Packed edition = shop.pack(folder.resolve("stick/brush"));
    Clock old = Clock.fixed(Instant.parse("1999-01-01T00:00:00Z"), ZoneOffset.UTC);
    SearchRoots sticks = SearchRoots.of(List.of(folder.resolve("stick")));
    Path home = Files.createDirectories(folder.resolve("home"));
    Bench.World world =
        new Bench.World(OtherMachine.named("mine"), sticks, old, new SecureRandom());
    CorrectionNote note =
        new CorrectionNote(
            edition.second().id(),
            CorrectionPin.TIME,
            1000,
            Optional.empty(),
            "Stir it.",
            LocalDate.of(2026, 3, 1));
    try (Bench bench = Bench.open(home, world)) {
      bench.courses().bringIn(edition.folder());
      TinyBench.license(bench, shop, shop.sell("Zoë Invented"));
      byte[] correction = shop.correct(edition.id(), note).toBytes();
      assertThat(bench.dropPlace().take(correction).outcome().text()).isEqualTo("accepted");
      assertPlays(bench, edition);
    }
    try (Bench again = TinyBench.open(home, OtherMachine.named("mine"), folder.resolve("stick"))) {
      assertPlays(again, edition);
      assertThat(again.courses().lesson(edition.id(), edition.second().id()).corrections())
          .containsExactly(note);
    }
  }

  @Test
  void pathsOfMoreThan260CharactersWithGermanAndAccentedLettersWork() throws Exception {
    Path deep = folder;
    while (deep.toString().length() < 300) {
      deep = deep.resolve("Größe für Öfen & Übung é ñ ł (Kopie)");
    }
    TinyShop.Packed edition = shop.pack(deep.resolve("stick/Pinsel"));
    try (Bench bench = owning(deep.resolve("Daten"), edition)) {
      assertPlays(bench, edition);
      keep(bench, edition);
      Files.move(deep.resolve("stick"), deep.resolve("weg"));
      bench.courses().lookAgain(edition.id());
      assertPlays(bench, edition);
    }
  }

  private static void keep(Bench bench, TinyShop.Packed edition) throws Exception {
    EditionFolder stick = EditionFolder.open(edition.folder(), TrustedRoots.firstMeeting());
    FetchWish wish = bench.courses().kept().wish(stick, Set.of(2));
    EditionFetch.run(
        wish,
        FetchNeed.of(wish, Progress.NONE),
        List.of(new FolderSource(edition.folder())),
        Progress.NONE);
    bench.courses().lookAgain(edition.id());
  }

  /** Each has a data folder; what one owns the other does not, from the same stick. */
  @Test
  void twoUsersOfOneLaptopDoNotOpenEachOthersCourses() throws Exception {
    TinyShop.Packed edition = shop.pack(folder.resolve("stick/brush"));
    try (Bench hers = owning(folder.resolve("hers"), edition);
        Bench his =
            TinyBench.quick(
                folder.resolve("his"), OtherMachine.named("mine"), folder.resolve("stick"))) {
      his.courses().bringIn(edition.folder());
      assertPlays(hers, edition);
      assertThatThrownBy(() -> assertPlays(his, edition)).isInstanceOf(Trouble.class);
      TinyBench.license(his, shop, shop.sell("Bo Invented"));
      assertPlays(his, edition);
      assertPlays(hers, edition);
    }
  }

  /** Only what changed comes on a stick; the rest lies on the laptop, in what was kept before. */
  @Test
  void lessonsKeptOfAnOlderEditionCompleteTheNewerOneOnAStick() throws Exception {
    TinyShop.Packed older = shop.pack(folder.resolve("first/brush"));
    try (Bench bench = owning(folder.resolve("home"), older)) {
      keep(bench, older);
      remove(folder.resolve("first"));
      TinyShop.Packed newer = shop.pack(folder.resolve("second/brush"));
      bench.courses().bringIn(newer.folder());
      TinyBench.license(bench, shop, shop.sell("Zoë Invented"));
      assertThat(bench.courses().open(newer.id()).folder().roots())
          .contains(bench.courses().kept().folder(older.id()));
      assertPlays(bench, newer);
    }
  }

  private static void remove(Path folder) throws IOException {
    try (var all = Files.walk(folder)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }
}
