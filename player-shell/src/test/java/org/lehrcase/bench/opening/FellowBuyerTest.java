package org.lehrcase.bench.opening;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.license.KeyLetter;
import org.lehrcase.core.license.LaptopCard;
import org.lehrcase.core.license.License;

/**
 * A buyer knows the key of the edition that all buyers share, and may set up a shop of his own,
 * even of the same name. He still cannot put words into the teacher's mouth.
 */
class FellowBuyerTest {
  private static final byte[] NO_PDF = {'%'};

  @TempDir Path folder;
  private TinyShop teacher;
  private TinyShop forger;
  private TinyShop.Packed edition;
  private TinyShop.Packed forged;
  private Bench bench;

  @BeforeEach
  void pack() throws Exception {
    teacher = new TinyShop();
    forger = new TinyShop();
    edition = teacher.pack(folder.resolve("teacher/brush"));
    TinyShop.Files2 files = new TinyShop.Files2(TinyShop.film(9, 90_000), NO_PDF, NO_PDF);
    forged = forger.forge(teacher, edition, folder.resolve("forger/brush"), files);
    bench =
        TinyBench.quick(
            folder.resolve("home"), OtherMachine.named("mine"), folder.resolve("sticks"));
  }

  @AfterEach
  void close() throws Exception {
    bench.close();
  }

  private Optional<Lesson> opened(TinyShop.Packed which) throws Exception {
    return bench.courses().open(edition.id()).lesson(which.second().id());
  }

  @Test
  void anEditionUnderTheTeachersIdAndAnotherRootDoesNotTakeItsPlace() throws Exception {
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, teacher, teacher.sell("Robin Invented"));
    assertThatThrownBy(() -> bench.courses().bringIn(forged.folder()))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("Another key signed");
    bench.courses().forgetAll();
    assertThat(opened(edition)).isPresent();
    assertThat(opened(forged)).isEmpty();
    assertThat(bench.roots().teachers()).hasSize(1);
  }

  @Test
  void itDoesNotOpenWithTheTeachersLicenseEvenIfItCameFirst() throws Exception {
    bench.courses().bringIn(forged.folder());
    TinyBench.license(bench, teacher, teacher.sell("Robin Invented"));
    assertThat(opened(forged)).isEmpty();
    assertThat(bench.courses().open(edition.id()).contents()).isEmpty();
    assertThat(bench.roots().teachers()).allMatch(shown -> shown.twin());
  }

  @Test
  void itIsPassedByWhenTheTeachersStickIsLookedFor() throws Exception {
    bench.courses().bringIn(edition.folder());
    TinyShop.Packed honest = forger.pack(folder.resolve("forger/own"));
    bench.courses().bringIn(honest.folder());
    TinyBench.license(bench, teacher, teacher.sell("Robin Invented"));
    TinyBench.copy(forged.folder(), folder.resolve("sticks/a/brush"));
    TinyBench.copy(edition.folder(), folder.resolve("sticks/b/brush"));
    java.nio.file.Files.move(folder.resolve("teacher"), folder.resolve("drawer"));
    bench.courses().forgetAll();
    assertThat(opened(edition)).isPresent();
    assertThat(bench.courses().open(edition.id()).folder().roots().get(0))
        .isEqualTo(folder.resolve("sticks/b/brush"));
  }

  @Test
  void aLetterForTheTeachersLicenseIsTakenFromTheTeacherOnly() throws Exception {
    bench.courses().bringIn(edition.folder());
    bench.courses().bringIn(forger.pack(folder.resolve("forger/own")).folder());
    License license = teacher.sell("Robin Invented");
    bench.opening().acceptLicense(license.toBytes());
    LaptopCard card = bench.opening().card(Optional.of(license.id()));
    KeyLetter wrong = forger.answer(card, license.id());
    assertThatThrownBy(() -> bench.opening().acceptLetter(wrong.toBytes()))
        .isInstanceOf(VaultException.Tampered.class);
    assertThat(bench.opening().state(license.id())).isEqualTo(LicenseState.ASKED);
    bench.opening().acceptLetter(teacher.answer(card, license.id()).toBytes());
    bench.courses().forgetAll();
    assertThat(opened(edition)).isPresent();
  }

  @Test
  void theNumberOfALicenseBelongsToTheTeacherWhoSoldIt() throws Exception {
    License license = teacher.sell("Robin Invented");
    bench.opening().acceptLicense(license.toBytes());
    License again = forger.sellAs(license.id(), "Robin Invented");
    assertThat(bench.opening().acceptLicense(again.toBytes()).outcome())
        .isEqualTo(Dropped.Outcome.REFUSED);
    assertThat(bench.opening().licenses())
        .extracting(kept -> kept.statement().root())
        .containsExactly(license.statement().root());
    assertThat(bench.roots().teachers()).hasSize(1);
  }
}
