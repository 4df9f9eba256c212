package org.lehrcase.core.edition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.seal.Progress;

class EditionCopyTest {

  @TempDir Path work;
  private Path stick;
  private Path target;
  private SampleEdition sample;

  @BeforeEach
  void pack() throws Exception {
    stick = Files.createDirectory(work.resolve("stick"));
    target = work.resolve("home").resolve("edition");
    sample = SampleEdition.pack(stick);
  }

  private static TreeMap<String, Octets> files(Path root) throws IOException {
    TreeMap<String, Octets> files = new TreeMap<>();
    try (var walk = Files.walk(root)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        files.put(root.relativize(file).toString(), Octets.of(SampleEdition.read(file)));
      }
    }
    return files;
  }

  @Test
  void aCopyHasTheSameFilesByteForByte() throws Exception {
    List<Long> told = new ArrayList<>();
    EditionCopy.copy(sample.open(), target, told::add);
    assertThat(files(target)).isEqualTo(files(stick));
    assertThat(told).isSorted();
    assertThat(told.get(told.size() - 1)).isEqualTo(EditionCheck.totalBytes(sample.open()));
    KeysFile.open(target, sample.id, sample.frontPage.digest(), sample.roots()).check();
  }

  @Test
  void litterAndStrangeFilesStayBehind() throws Exception {
    Files.write(stick.resolve("autorun.inf"), new byte[4]);
    Files.write(stick.resolve("001").resolve("evil.exe"), new byte[4]);
    EditionCopy.copy(sample.open(), target, Progress.NONE);
    assertThat(target.resolve("autorun.inf")).doesNotExist();
    assertThat(target.resolve("001").resolve("evil.exe")).doesNotExist();
  }

  @Test
  void aStoppedCopyIsNoEditionAndGoesOnWithWholeFiles() throws Exception {
    EditionFolder from = sample.open();
    long total = EditionCheck.totalBytes(from);
    for (long limit = 0; limit < total; limit += total / 5) {
      long stopAt = limit;
      assertThatThrownBy(() -> EditionCopy.copy(from, target, bytes -> bytes < stopAt))
          .isInstanceOf(CancellationException.class);
      assertThat(target.resolve(EditionLayout.FRONT_PAGE)).doesNotExist();
    }
    EditionCopy.copy(from, target, Progress.NONE);
    var copied = files(target);
    copied.keySet().removeIf(name -> name.endsWith(".part"));
    assertThat(copied).isEqualTo(files(stick));
  }

  @Test
  void changesAndAnOlderEditionBecomeOneWholeFolder() throws Exception {
    Path changes = Files.createDirectory(work.resolve("changes"));
    Files.move(stick.resolve("001"), changes.resolve("001"));
    for (String name : List.of("lehrcase.front", "contents.sealed", "keys.index", "keys")) {
      Files.move(stick.resolve(name), changes.resolve(name));
    }
    EditionFolder merged = EditionFolder.open(changes, sample.roots()).alsoIn(List.of(stick));
    EditionCopy.copy(merged, target, Progress.NONE);
    EditionFolder copy = EditionFolder.open(target, sample.roots());
    assertThat(EditionCheck.everyByte(copy, Progress.NONE).isWhole()).isTrue();
  }

  @Test
  void theKeysFileOfTheOlderEditionIsLeftBehind() throws Exception {
    Path older = Files.createDirectory(work.resolve("older"));
    SampleEdition.pack(older);
    Files.delete(stick.resolve(EditionLayout.KEYS_INDEX));
    EditionCopy.copy(sample.open().alsoIn(List.of(older)), target, Progress.NONE);
    assertThat(target.resolve(EditionLayout.KEYS_INDEX)).doesNotExist();
  }

  @Test
  void aHalfCopyIsFilledUpInPlace() throws Exception {
    EditionCopy.copy(sample.open(), target, Progress.NONE);
    PartEntry film = sample.entry(sample.second, 0, 0);
    Path there = target.resolve("002").resolve(film.address().hex());
    SampleEdition.cut(there, 5);
    EditionCopy.copy(sample.open(), target, Progress.NONE);
    assertThat(files(target)).isEqualTo(files(stick));
  }

  @Test
  void missingPartsMakeAnHonestHalfCopy() throws Exception {
    Files.delete(sample.path(sample.entry(sample.second, 0, 0)));
    EditionCopy.copy(sample.open(), target, Progress.NONE);
    EditionFolder copy = EditionFolder.open(target, sample.roots());
    EditionCheck check = EditionCheck.everyByte(copy, Progress.NONE);
    assertThat(check.isDamaged()).isFalse();
    assertThat(check.isWhole()).isFalse();
  }

  @Test
  void anotherEditionIsNeverOverwritten() throws Exception {
    EditionCopy.copy(sample.open(), target, Progress.NONE);
    SampleEdition second = SampleEdition.pack(Files.createDirectory(work.resolve("second")));
    var before = files(target);
    assertThatThrownBy(() -> EditionCopy.copy(second.open(), target, Progress.NONE))
        .isInstanceOf(VaultException.Tampered.class);
    assertThat(files(target)).isEqualTo(before);
  }

  @Test
  void theNextEditionOfTheSameShopIsAnotherEdition() throws Exception {
    EditionCopy.copy(sample.open(), target, Progress.NONE);
    byte[] sealed = sample.sealContents(sample.contents.encode());
    Files.write(stick.resolve(EditionLayout.CONTENTS), sealed);
    FrontPage next = FrontPage.sign(sample.facts(sealed), sample.statement, sample.desk);
    EditionFolder from = EditionFolder.of(next, List.of(stick));
    assertThatThrownBy(() -> EditionCopy.copy(from, target, Progress.NONE))
        .isInstanceOf(FileAlreadyExistsException.class);
  }

  @Test
  void damagedContentsAreNotCopied() throws Exception {
    SampleEdition.damage(stick.resolve(EditionLayout.CONTENTS), 100);
    EditionFolder from = sample.open();
    assertThatThrownBy(() -> EditionCopy.copy(from, target, Progress.NONE))
        .isInstanceOf(VaultException.Tampered.class);
    assertThat(target).doesNotExist();
  }

  @Test
  void correctionsTravelWithTheCopy() throws Exception {
    var note =
        new CorrectionNote(
            sample.first.id(),
            CorrectionPin.TIME,
            5,
            java.util.Optional.empty(),
            "Stir.",
            java.time.LocalDate.of(2026, 2, 1));
    byte[] sealed = Correction.seal(note, sample.id, sample.key, SampleEdition.RANDOM);
    Correction correction = Correction.sign(sealed, sample.id, sample.statement, sample.desk);
    Path shelf = Files.createDirectory(stick.resolve(EditionLayout.CORRECTIONS));
    Files.write(shelf.resolve(correction.fileName()), correction.toBytes());
    EditionCopy.copy(sample.open(), target, Progress.NONE);
    EditionFolder copy = EditionFolder.open(target, sample.roots());
    assertThat(CorrectionShelf.of(copy).get(0).open(sample.key)).isEqualTo(note);
  }
}
