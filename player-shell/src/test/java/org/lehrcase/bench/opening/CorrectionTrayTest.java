package org.lehrcase.bench.opening;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.Dropped.Kind;
import org.lehrcase.bench.opening.Dropped.Outcome;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.message.ArmorKind;

/** What happens to a correction that a buyer hands over, right and wrong. */
class CorrectionTrayTest {
  private static final OtherMachine MINE = OtherMachine.named("mine");

  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;
  private CorrectionNote note;

  @BeforeEach
  void pack() throws Exception {
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("stick/brush"));
    note = note("Mix it 2:1, not 1:2.");
  }

  private CorrectionNote note(String text) {
    return new CorrectionNote(
        edition.second().id(),
        CorrectionPin.PAGE,
        1,
        Optional.of(edition.file(AssetRole.HANDOUT).id()),
        text,
        LocalDate.of(2026, 3, 1));
  }

  private Bench bench() throws Exception {
    return TinyBench.open(folder.resolve("home"), MINE, folder.resolve("stick"));
  }

  private Bench owning() throws Exception {
    Bench bench = bench();
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, shop, shop.sell("Robin Invented"));
    return bench;
  }

  private List<CorrectionNote> shown(Bench bench) throws Exception {
    return bench.courses().lesson(edition.id(), edition.second().id()).corrections();
  }

  private static byte[] text(Correction correction) {
    return Armor.write(ArmorKind.CORRECTION, "A correction.", correction.toBytes())
        .getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void aTextIsPutInPlaceAndStaysAfterRestart() throws Exception {
    try (Bench bench = owning()) {
      Dropped dropped = bench.dropPlace().take(text(shop.correct(edition.id(), note)));
      assertThat(dropped.kind()).isEqualTo(Kind.CORRECTION);
      assertThat(dropped.outcome()).isEqualTo(Outcome.ACCEPTED);
      assertThat(dropped.message()).contains("lesson 2", "Brush");
      assertThat(dropped.next()).contains("page 1");
      assertThat(shown(bench)).containsExactly(note);
    }
    try (Bench again = bench()) {
      assertThat(shown(again)).containsExactly(note);
    }
    assertThat(edition.folder().resolve(EditionLayout.CORRECTIONS)).doesNotExist();
  }

  @Test
  void theBareFileIsTakenToo() throws Exception {
    try (Bench bench = owning()) {
      byte[] file = shop.correct(edition.id(), note).toBytes();
      assertThat(bench.dropPlace().take(file).outcome()).isEqualTo(Outcome.ACCEPTED);
      assertThat(bench.dropPlace().take(file).outcome()).isEqualTo(Outcome.KNOWN);
      assertThat(shown(bench)).containsExactly(note);
    }
  }

  @Test
  void whatLiesInTheFolderIsKnownAndTheSameWordsAreShownOnce() throws Exception {
    try (Bench bench = owning()) {
      Correction inFolder = shop.correct(edition.id(), note);
      Path shelf = Files.createDirectories(edition.folder().resolve(EditionLayout.CORRECTIONS));
      Files.write(shelf.resolve(inFolder.fileName()), inFolder.toBytes());
      assertThat(bench.dropPlace().take(text(inFolder)).outcome()).isEqualTo(Outcome.KNOWN);
      Correction sealedAgain = shop.correct(edition.id(), note);
      assertThat(bench.dropPlace().take(text(sealedAgain)).outcome()).isEqualTo(Outcome.ACCEPTED);
      assertThat(shown(bench)).containsExactly(note);
    }
  }

  @Test
  void aBareFileThatWasChangedIsCalledAChangedCorrection() throws Exception {
    try (Bench bench = owning()) {
      byte[] file = shop.correct(edition.id(), note).toBytes();
      for (int at : new int[] {file.length - 1, file.length / 2, file.length - 70}) {
        byte[] changed = file.clone();
        changed[at] ^= 1;
        Dropped dropped = bench.dropPlace().take(changed);
        assertThat(dropped.kind()).isEqualTo(Kind.CORRECTION);
        assertThat(dropped.outcome()).isEqualTo(Outcome.REFUSED);
        assertThat(dropped.message()).contains("changed on its way");
      }
      assertThat(shown(bench)).isEmpty();
    }
  }

  @Test
  void anUnknownEditionIsSaidAndNothingIsKept() throws Exception {
    try (Bench bench = bench()) {
      Correction correction = shop.correct(edition.id(), note);
      Dropped dropped = bench.dropPlace().take(text(correction));
      assertThat(dropped.outcome()).isEqualTo(Outcome.REFUSED);
      assertThat(dropped.message()).contains("not among your courses");
      assertThat(bench.store().corrections().holds(correction.digest())).isFalse();
    }
  }

  @Test
  void anotherTeachersSignatureIsRefused() throws Exception {
    try (Bench bench = owning()) {
      Correction forged = new TinyShop("Invented Studio").correct(edition.id(), note);
      Dropped dropped = bench.dropPlace().take(text(forged));
      assertThat(dropped.outcome()).isEqualTo(Outcome.REFUSED);
      assertThat(dropped.message()).contains("Somebody else than the teacher");
      assertThat(shown(bench)).isEmpty();
    }
  }

  @Test
  void aKeyThatWasReplacedSignsNothingNew() throws Exception {
    try (Bench bench = owning()) {
      Correction before = shop.correct(edition.id(), note);
      bench.dropPlace().take(text(before));
      bench.roots().meet(shop.renewed());
      Dropped later = bench.dropPlace().take(text(shop.correct(edition.id(), note("Other."))));
      assertThat(later.outcome()).isEqualTo(Outcome.REFUSED);
      assertThat(later.message()).contains("was replaced");
      assertThat(bench.dropPlace().take(text(before)).outcome()).isEqualTo(Outcome.KNOWN);
      assertThat(shown(bench)).containsExactly(note);
    }
  }

  @Test
  void oneChangedBitIsNoticed() throws Exception {
    try (Bench bench = owning()) {
      byte[] message = shop.correct(edition.id(), note).toBytes();
      message[message.length - 100] ^= 1;
      String text = Armor.write(ArmorKind.CORRECTION, "A correction.", message);
      Dropped dropped = bench.dropPlace().take(text.getBytes(StandardCharsets.UTF_8));
      assertThat(dropped.outcome()).isEqualTo(Outcome.REFUSED);
      assertThat(dropped.message()).contains("changed on its way");
      assertThat(shown(bench)).isEmpty();
    }
  }

  @Test
  void withoutALicenseOrWithTheStickAwayItWaits() throws Exception {
    try (Bench bench = bench()) {
      bench.courses().bringIn(edition.folder());
      Dropped locked = bench.dropPlace().take(text(shop.correct(edition.id(), note)));
      assertThat(locked.outcome()).isEqualTo(Outcome.ACCEPTED);
      assertThat(locked.next()).contains("when the course opens");
      TinyBench.license(bench, shop, shop.sell("Robin Invented"));
      assertThat(shown(bench)).containsExactly(note);
    }
    Files.move(folder.resolve("stick"), folder.resolve("drawer"));
    CorrectionNote second = note("And stir.");
    try (Bench bench = bench()) {
      Dropped away = bench.dropPlace().take(text(shop.correct(edition.id(), second)));
      assertThat(away.outcome()).isEqualTo(Outcome.ACCEPTED);
    }
    Files.move(folder.resolve("drawer"), folder.resolve("stick"));
    try (Bench bench = bench()) {
      assertThat(shown(bench)).containsExactly(note, second);
    }
  }
}
