package org.lehrcase.core.edition;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.seal.ClearSource;

class OpenedEditionTest {

  @TempDir Path folder;
  private SampleEdition sample;

  @BeforeEach
  void pack() throws Exception {
    sample = SampleEdition.pack(folder);
  }

  @Test
  void theKeyOpensEveryLesson() throws Exception {
    OpenedEdition opened = OpenedEdition.open(sample.open(), sample.key);
    assertThat(opened.lessons()).isEqualTo(sample.contents.lessons());
    assertThat(opened.contents()).contains(sample.contents);
    assertThat(opened.lesson(sample.second.id())).contains(sample.second);
    Asset film = sample.second.assets().get(0);
    assertThat(opened.asset(film.id())).contains(film);
    assertThat(opened.isHere(film)).isTrue();
    try (ClearSource source = opened.open(film)) {
      ByteBuffer end = ByteBuffer.allocate(70_001);
      source.readExactly(source.sizeBytes() - 70_001, end);
      assertThat(end.array()).isEqualTo(SampleEdition.film(4, 70_001));
    }
  }

  @Test
  void smallFilesAreReadWholeUpToALimit() throws Exception {
    OpenedEdition opened = OpenedEdition.open(sample.open(), sample.key);
    Asset handout = sample.first.assets().get(2);
    assertThat(opened.read(handout, 5)).isEqualTo("pages".getBytes(UTF_8));
    assertThatThrownBy(() -> opened.read(handout, 4)).isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void openLessonsNeedNoLicenseAndShowNoMore() throws Exception {
    OpenedEdition opened = OpenedEdition.openLessonsOnly(sample.open());
    assertThat(opened.lessons()).containsExactly(sample.first);
    assertThat(opened.contents()).isEmpty();
    assertThat(opened.read(sample.first.assets().get(1), 90_000))
        .isEqualTo(SampleEdition.film(2, 90_000));
    assertThat(opened.asset(sample.second.assets().get(0).id())).isEmpty();
  }

  @Test
  void thePublishedClosingKeyOpensWithoutALicense() throws Exception {
    assertThat(OpenedEdition.openClosed(sample.open(), sample.closing).lessons()).hasSize(2);
  }

  @Test
  void anotherClosingKeyDoesNot() throws Exception {
    EditionFolder edition = sample.open();
    RootSecret other = RootSecret.random(SampleEdition.RANDOM);
    assertThatThrownBy(() -> OpenedEdition.openClosed(edition, other.closingKey(0)))
        .isInstanceOf(VaultException.NotLicensed.class);
    assertThatThrownBy(() -> OpenedEdition.openClosed(edition, sample.root.closingKey(1)))
        .isInstanceOf(VaultException.NotLicensed.class);
  }

  @Test
  void theKeyOfAnotherEditionDoesNotOpen() throws Exception {
    var other = sample.master.editionKey(EditionId.random(SampleEdition.RANDOM));
    EditionFolder edition = sample.open();
    assertThatThrownBy(() -> OpenedEdition.open(edition, other))
        .isInstanceOf(VaultException.NotLicensed.class);
  }

  @Test
  void missingContentsAreNotHereAndChangedOnesAreTampered() throws Exception {
    Path contents = folder.resolve(EditionLayout.CONTENTS);
    byte[] good = SampleEdition.read(contents);
    EditionFolder edition = sample.open();
    Files.delete(contents);
    assertThatThrownBy(() -> OpenedEdition.open(edition, sample.key))
        .isInstanceOf(VaultException.NotHere.class);
    for (int at : new int[] {16, 35, 45, 100, good.length - 1}) {
      byte[] bad = good.clone();
      bad[at] ^= 1;
      Files.write(contents, bad);
      assertThatThrownBy(() -> OpenedEdition.open(edition, sample.key))
          .isInstanceOf(VaultException.class);
    }
  }

  @Test
  void aFellowBuyerWhoSealsOtherContentsWithTheSharedKeyIsFoundOut() throws Exception {
    Files.write(
        folder.resolve(EditionLayout.CONTENTS), sample.sealContents(sample.contents.encode()));
    EditionFolder edition = sample.open();
    assertThatThrownBy(() -> OpenedEdition.open(edition, sample.key))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void contentsOfAnotherEditionAreRefusedEvenIfTheDeskSignsThem() throws Exception {
    Contents other =
        new Contents(
            EditionId.random(SampleEdition.RANDOM),
            "brush",
            "Brush",
            LocalDate.of(2026, 1, 31),
            Set.of(),
            List.of());
    byte[] sealed = sample.sealContents(other.encode());
    Files.write(folder.resolve(EditionLayout.CONTENTS), sealed);
    FrontPage front = FrontPage.sign(sample.facts(sealed), sample.statement, sample.desk);
    EditionFolder edition = EditionFolder.of(front, List.of(folder));
    assertThatThrownBy(() -> OpenedEdition.open(edition, sample.key))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aMissingPartIsNotHereAndItsLessonStaysListed() throws Exception {
    OpenedEdition opened = OpenedEdition.open(sample.open(), sample.key);
    Asset film = sample.second.assets().get(0);
    Files.delete(sample.path(sample.entry(sample.second, 0, 1)));
    assertThat(opened.isHere(film)).isFalse();
    assertThat(opened.asset(film.id())).contains(film);
    try (ClearSource source = opened.open(film)) {
      ByteBuffer end = ByteBuffer.allocate(1);
      assertThatThrownBy(() -> source.readExactly(source.sizeBytes() - 1, end))
          .isInstanceOf(VaultException.NotHere.class);
    }
  }

  @Test
  void aMissingDigestListIsNotHere() throws Exception {
    OpenedEdition opened = OpenedEdition.open(sample.open(), sample.key);
    Path film = sample.path(sample.entry(sample.second, 0, 0));
    Files.delete(film.resolveSibling(film.getFileName() + EditionLayout.DIGESTS_ENDING));
    assertThatThrownBy(() -> opened.open(sample.second.assets().get(0)))
        .isInstanceOf(VaultException.NotHere.class);
  }

  @Test
  void aDamagedSegmentEndsThereAndTheRestIsRead() throws Exception {
    Path film = sample.path(sample.entry(sample.second, 0, 0));
    SampleEdition.damage(film, (1 << 16) + 9);
    OpenedEdition opened = OpenedEdition.open(sample.open(), sample.key);
    try (ClearSource source = opened.open(sample.second.assets().get(0))) {
      ByteBuffer inside = ByteBuffer.allocate(10);
      assertThatThrownBy(() -> source.readExactly(70_000, inside))
          .isInstanceOf(VaultException.Tampered.class);
      assertThat(inside.position()).isZero();
      source.readExactly(140_000, inside);
      assertThat(inside.remaining()).isZero();
    }
  }

  @Test
  void aPartUnderTheNameOfAnotherIsRefused() throws Exception {
    Path shown = sample.path(sample.entry(sample.first, 0, 0));
    byte[] other = SampleEdition.read(shown);
    other[20] ^= 1; // asset id
    Files.write(shown, other);
    OpenedEdition opened = OpenedEdition.openLessonsOnly(sample.open());
    assertThatThrownBy(() -> opened.open(sample.first.assets().get(0)))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void partsAreFoundAgainUnderAnotherRoot(@TempDir Path stick) throws Exception {
    OpenedEdition opened = OpenedEdition.open(sample.open(), sample.key);
    Path moved = stick.resolve("elsewhere");
    Files.move(folder.resolve("002"), Files.createDirectories(moved).resolve("002"));
    Asset film = sample.second.assets().get(0);
    assertThat(opened.isHere(film)).isFalse();
    OpenedEdition again = opened.in(EditionFolder.of(sample.frontPage, List.of(folder, moved)));
    assertThat(again.isHere(film)).isTrue();
    again.open(film).close();
  }

  @Test
  void anotherEditionIsNoPlaceToLook(@TempDir Path other) throws Exception {
    OpenedEdition opened = OpenedEdition.open(sample.open(), sample.key);
    EditionFolder foreign = SampleEdition.pack(other).open();
    assertThatThrownBy(() -> opened.in(foreign)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aPartThatIsNotListedIsUnknown() throws IOException, VaultException {
    assertThat(sample.open().frontPage().part(PartAddress.of(new byte[32]))).isEmpty();
  }
}
