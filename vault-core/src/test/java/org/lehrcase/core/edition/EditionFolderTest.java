package org.lehrcase.core.edition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;

/** A folder is hostile input: every trick of a file system is a row here. */
class EditionFolderTest {

  @TempDir Path folder;
  @TempDir Path outside;
  private SampleEdition sample;
  private PartEntry film;

  @BeforeEach
  void pack() throws Exception {
    sample = SampleEdition.pack(folder);
    film = sample.entry(sample.second, 0, 0);
  }

  @Test
  void everyPartIsLocated() throws Exception {
    EditionFolder edition = sample.open();
    for (PartEntry part : sample.frontPage.facts().parts()) {
      assertThat(edition.locate(part)).contains(sample.path(part));
    }
    assertThat(edition.roots()).containsExactly(folder);
  }

  @Test
  void aFolderWithoutFrontPageIsNoEdition() throws IOException {
    Files.delete(folder.resolve(EditionLayout.FRONT_PAGE));
    assertThatThrownBy(sample::open).isInstanceOf(VaultException.NotHere.class);
    assertThatThrownBy(() -> EditionFolder.open(folder.resolve("none"), sample.roots()))
        .isInstanceOf(VaultException.NotHere.class);
  }

  @Test
  void aFrontPageThatIsALinkIsRefused() throws IOException {
    Path front = folder.resolve(EditionLayout.FRONT_PAGE);
    Path real = Files.move(front, outside.resolve("front"));
    Files.createSymbolicLink(front, real);
    assertThatThrownBy(sample::open).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aFrontPageThatIsAFolderIsRefused() throws IOException {
    Files.delete(folder.resolve(EditionLayout.FRONT_PAGE));
    Files.createDirectory(folder.resolve(EditionLayout.FRONT_PAGE));
    assertThatThrownBy(sample::open).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aFrontPageAboveAMebibyteIsRefusedByItsLength() throws IOException {
    Files.write(folder.resolve(EditionLayout.FRONT_PAGE), new byte[(1 << 20) + 1]);
    assertThatThrownBy(sample::open).isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void aPartThatIsALinkIsNotLocated() throws Exception {
    Path part = sample.path(film);
    Files.createSymbolicLink(part, Files.move(part, outside.resolve("part")));
    assertThat(sample.open().locate(film)).isEmpty();
    assertThat(EditionCheck.glance(sample.open()).isDamaged()).isTrue();
  }

  @Test
  void aSubfolderThatIsALinkIsNotEntered() throws Exception {
    Path sub = folder.resolve("002");
    Files.createSymbolicLink(sub, Files.move(sub, outside.resolve("moved")));
    assertThat(sample.open().locate(film)).isEmpty();
  }

  @Test
  void aPartOfAnotherLengthIsNotLocated() throws Exception {
    SampleEdition.cut(sample.path(film), 1);
    assertThat(sample.open().locate(film)).isEmpty();
  }

  @Test
  void aPartInTheSubfolderOfAnotherLessonIsFound() throws Exception {
    EditionFolder edition = sample.open();
    Files.createDirectory(folder.resolve("017"));
    Path moved = folder.resolve("017").resolve(film.address().hex());
    Files.move(sample.path(film), moved);
    assertThat(edition.locate(film)).contains(moved);
  }

  @Test
  void litterOfOperatingSystemsIsIgnored() throws Exception {
    Files.write(folder.resolve("._lehrcase.front"), new byte[9]);
    Files.write(folder.resolve(".DS_Store"), new byte[9]);
    Files.createDirectory(folder.resolve("System Volume Information"));
    Files.write(folder.resolve("002").resolve("._" + film.address().hex()), new byte[9]);
    Files.write(folder.resolve("002").resolve("Thumbs.db"), new byte[9]);
    assertThat(EditionCheck.everyByte(sample.open(), SampleEdition.QUIET).isWhole()).isTrue();
  }

  @Test
  void aFolderOfChangesIsCompletedByAnOlderEdition() throws Exception {
    Path changes = Files.createDirectory(outside.resolve("changes"));
    Files.move(folder.resolve("001"), changes.resolve("001"));
    for (String name : List.of(EditionLayout.FRONT_PAGE, EditionLayout.CONTENTS)) {
      Files.copy(folder.resolve(name), changes.resolve(name));
    }
    EditionFolder alone = EditionFolder.open(changes, sample.roots());
    assertThat(alone.locate(film)).isEmpty();
    EditionFolder merged = alone.alsoIn(List.of(folder, folder));
    assertThat(merged.roots()).containsExactly(changes, folder);
    assertThat(merged.locate(film)).contains(sample.path(film));
    assertThat(EditionCheck.everyByte(merged, SampleEdition.QUIET).isWhole()).isTrue();
  }

  @Test
  void aPulledStickHoldsNothing() throws Exception {
    EditionFolder edition =
        EditionFolder.of(sample.frontPage, List.of(outside.resolve("gone"), folder));
    assertThat(edition.locate(film)).contains(sample.path(film));
    EditionFolder gone = EditionFolder.of(sample.frontPage, List.of(outside.resolve("gone")));
    assertThat(gone.locate(film)).isEmpty();
    assertThatThrownBy(gone::readContents).isInstanceOf(VaultException.NotHere.class);
  }

  @Test
  void aGoodPartInTheSecondRootStandsInForABadOneInTheFirst() throws Exception {
    Path copy = Files.createDirectories(outside.resolve("002")).resolve(film.address().hex());
    Files.copy(sample.path(film), copy, StandardCopyOption.REPLACE_EXISTING);
    SampleEdition.cut(sample.path(film), 3);
    assertThat(sample.open().alsoIn(List.of(outside)).locate(film)).contains(copy);
  }
}
