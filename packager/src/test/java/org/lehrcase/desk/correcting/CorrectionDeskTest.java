package org.lehrcase.desk.correcting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.CorrectionShelf;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.PackWish;
import org.lehrcase.desk.pack.Packer;
import org.lehrcase.desk.pack.TinyCourse;

class CorrectionDeskTest {
  private static final CorrectionWish.Place AT = new CorrectionWish.Place.Moment(12_000);

  @TempDir Path root;

  private TestDesk desk;
  private Path edition;

  @BeforeEach
  void packs() throws Exception {
    desk = TestDesk.fresh(root.resolve("desk"));
    TinyCourse course = TinyCourse.in(root.resolve("brush"));
    PackWish wish = new PackWish(course.folder(), root.resolve("out"), Optional.empty(), Set.of());
    edition =
        new Packer(desk.home(), desk.keys(), new SecureRandom(), PackListener.NONE)
            .pack(wish)
            .folder();
  }

  @AfterEach
  void closes() throws Exception {
    desk.close();
  }

  private CorrectionDesk corrections() {
    return new CorrectionDesk(desk.home(), desk.keys(), new SecureRandom(), TestDesk.CLOCK);
  }

  private EditionFolder folder() throws Exception {
    return EditionFolder.open(edition, TrustedRoots.pinned(desk.keys().root()));
  }

  @Test
  void aCorrectionIsFoundInTheEditionAndReadByItsKey() throws Exception {
    corrections().correct(edition, new CorrectionWish(3, AT, "8 minutes, not 18"));
    List<Correction> found = CorrectionShelf.of(folder());
    assertThat(found).hasSize(1);
    try (EditionKey key = desk.keys().master(0).editionKey(found.get(0).edition())) {
      CorrectionNote note = found.get(0).open(key);
      assertThat(note.pin()).isEqualTo(CorrectionPin.TIME);
      assertThat(note.position()).isEqualTo(12_000);
      assertThat(note.text()).isEqualTo("8 minutes, not 18");
      assertThat(note.day()).isEqualTo(LocalDate.now(TestDesk.CLOCK));
    }
    assertThat(desk.book().events().all())
        .anyMatch(event -> event.toString().contains("corrected"));
  }

  @Test
  void theWordsAreNotInTheFileAndTheEditionStaysWhole() throws Exception {
    Correction correction =
        corrections().correct(edition, new CorrectionWish(3, AT, "8 minutes, not 18"));
    assertThat(new String(correction.toBytes(), java.nio.charset.StandardCharsets.ISO_8859_1))
        .doesNotContain("minutes");
    assertThat(EditionCheck.everyByte(folder(), Progress.NONE).isWhole()).isTrue();
  }

  @Test
  void anotherEditionsKeyDoesNotReadIt() throws Exception {
    Correction correction =
        corrections().correct(edition, new CorrectionWish(3, AT, "8 minutes, not 18"));
    var other = org.lehrcase.core.id.EditionId.random(new SecureRandom());
    try (EditionKey key = desk.keys().master(0).editionKey(other)) {
      assertThatThrownBy(() -> correction.open(key)).isInstanceOf(VaultException.Tampered.class);
    }
  }

  @ParameterizedTest
  @CsvSource({"9,something", "3,''", "3,'   '"})
  void whatCannotBeACorrectionIsRefusedAndNothingIsWritten(int lesson, String text) {
    assertThatThrownBy(() -> corrections().correct(edition, new CorrectionWish(lesson, AT, text)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("Nothing was written");
    assertThat(Files.exists(edition.resolve("corrections"))).isFalse();
  }

  @Test
  void aPageNeedsAPaperWithPages() {
    CorrectionWish wish = new CorrectionWish(3, new CorrectionWish.Place.Page(2), "right");
    assertThatThrownBy(() -> corrections().correct(edition, wish))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("no handout");
  }

  @Test
  void anotherDesksEditionIsRefused() throws Exception {
    try (TestDesk other = TestDesk.fresh(root.resolve("other"))) {
      CorrectionDesk foreign =
          new CorrectionDesk(other.home(), other.keys(), new SecureRandom(), TestDesk.CLOCK);
      assertThatThrownBy(() -> foreign.correct(edition, new CorrectionWish(3, AT, "right")))
          .isInstanceOf(VaultException.Tampered.class);
    }
  }

  @ParameterizedTest
  @CsvSource({"0:00,0", "12:40,760000", "1:02:40,3760000", "90:00,5400000"})
  void aTimeIsReadAsPeopleWriteIt(String typed, long millis) throws Exception {
    assertThat(CorrectionDesk.momentOf(typed).atMillis()).isEqualTo(millis);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "12", "12:4", "-1:00", "1:2:3:4", "12.40", "::"})
  void whatIsNoTimeIsRefused(String typed) {
    assertThatThrownBy(() -> CorrectionDesk.momentOf(typed)).isInstanceOf(RefusedException.class);
  }
}
