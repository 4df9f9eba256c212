package org.lehrcase.desk.safe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.license.LicenseTerms.Allowance;
import org.lehrcase.desk.answering.Licensing;
import org.lehrcase.desk.answering.Order;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.home.TestDesk;

class BackupTest {
  private static final long SEED = 77L;
  private static final int ROUNDS = 60;

  @TempDir Path folder;
  private final SecureRandom random = new SecureRandom();

  @BeforeEach
  void aDeskWithASale() throws Exception {
    try (TestDesk desk = TestDesk.fresh(folder.resolve("desk"))) {
      new Licensing(desk.book(), desk.keys(), desk.home().statement(), random)
          .sell(new Order("Ida", "ida@studio.example", List.of("brush"), new Allowance(1, 2)));
      Files.write(desk.home().packing().resolve("brush.job"), new byte[] {1, 2, 3});
    }
  }

  private static Passphrase words() {
    return Passphrase.taking(TestDesk.WORDS.toCharArray());
  }

  private Rehearsal.Found make(Path file) throws Exception {
    try (Passphrase words = words()) {
      return new Backup(folder.resolve("desk"), TestDesk.CLOCK, random, TestDesk.QUICK)
          .make(words, file);
    }
  }

  private Rehearsal.Found rehearse(Path file) throws Exception {
    try (Passphrase words = words()) {
      return new Rehearsal(TestDesk.CLOCK).of(file, words, folder);
    }
  }

  @Test
  void aBackupIsMadeWhileTheDeskIsOpenAndIsProved() throws Exception {
    Path file = folder.resolve("backup");
    try (TestDesk desk = TestDesk.open(folder.resolve("desk"))) {
      Rehearsal.Found found = make(file);
      assertThat(found.people()).isEqualTo(1);
      assertThat(found.licenses()).isEqualTo(1);
      assertThat(found.breaks()).isEmpty();
      assertThat(desk.book().settings().of(Backup.LAST)).contains("2027-03-04");
    }
    assertThat(rehearse(file).shop()).isEqualTo("Atelier Test");
    assertThat(folder).isDirectoryNotContaining("glob:**.part");
    assertThat(folder.resolve("desk")).isDirectoryNotContaining("glob:**.part");
  }

  @Test
  void nothingOfTheBookCanBeReadInTheFile() throws Exception {
    Path file = folder.resolve("backup");
    make(file);
    String bytes = new String(bytes(file), java.nio.charset.StandardCharsets.ISO_8859_1);
    assertThat(bytes).doesNotContain("ida@studio").doesNotContain("SQLite format");
  }

  @Test
  void aRestoredDeskWorksAndItsEditionsOrderBehind() throws Exception {
    Path file = folder.resolve("backup");
    make(file);
    Path restored = folder.resolve("restored");
    try (Passphrase words = words()) {
      new Rehearsal(TestDesk.CLOCK).restore(file, words, restored, TestDesk.QUICK, random);
    }
    try (TestDesk desk = TestDesk.open(restored)) {
      assertThat(desk.keys().restores()).isEqualTo(1);
      assertThat(desk.book().people().byEmail("ida@studio.example")).isPresent();
      assertThat(desk.book().events().newest().orElseThrow().kind()).isEqualTo("restored");
      assertThat(desk.home().packing().resolve("brush.job")).hasBinaryContent(new byte[] {1, 2, 3});
    }
  }

  @Test
  void anotherPassphraseOpensNothing() throws Exception {
    Path file = folder.resolve("backup");
    make(file);
    try (Passphrase wrong = Passphrase.taking("something else entirely".toCharArray())) {
      assertThatThrownBy(() -> new Rehearsal(TestDesk.CLOCK).of(file, wrong, folder))
          .isInstanceOf(DeskHomeException.WrongPassphrase.class);
    }
    assertThat(folder).isDirectoryNotContaining("glob:**rehearsal.part");
  }

  @Test
  void aWrongPassphraseMakesNoBackup() {
    Path file = folder.resolve("backup");
    try (Passphrase wrong = Passphrase.taking("something else entirely".toCharArray())) {
      Backup backup = new Backup(folder.resolve("desk"), TestDesk.CLOCK, random, TestDesk.QUICK);
      assertThatThrownBy(() -> backup.make(wrong, file))
          .isInstanceOf(DeskHomeException.WrongPassphrase.class);
    }
    assertThat(file).doesNotExist();
  }

  @Test
  void everyChangedOrMissingByteIsFound() throws Exception {
    Path file = folder.resolve("backup");
    make(file);
    byte[] whole = bytes(file);
    SplittableRandom bits = new SplittableRandom(SEED);
    for (int round = 0; round < ROUNDS; round++) {
      byte[] bad = whole.clone();
      int at = bits.nextInt(bad.length);
      if (round % 3 == 0) {
        bad = java.util.Arrays.copyOf(bad, at);
      } else {
        bad[at] ^= (byte) (1 << bits.nextInt(8));
      }
      Path damaged = folder.resolve("damaged");
      Files.write(damaged, bad);
      assertThatThrownBy(() -> rehearse(damaged))
          .as("seed " + SEED + ", round " + round + ", byte " + at)
          .isInstanceOfAny(IOException.class, DeskHomeException.class);
    }
    assertThat(folder).isDirectoryNotContaining("glob:**rehearsal.part");
  }

  @Test
  void whatIsThereIsNotOverwritten() throws Exception {
    Path file = folder.resolve("backup");
    make(file);
    assertThatThrownBy(() -> make(file))
        .isInstanceOf(java.nio.file.FileAlreadyExistsException.class);
    try (Passphrase words = words()) {
      Path desk = folder.resolve("desk");
      Rehearsal rehearsal = new Rehearsal(TestDesk.CLOCK);
      assertThatThrownBy(() -> rehearsal.restore(file, words, desk, TestDesk.QUICK, random))
          .isInstanceOf(DeskHomeException.NotAHome.class);
    }
  }

  private static byte[] bytes(Path file) throws IOException {
    try (var in = Files.newInputStream(file)) {
      return in.readNBytes(1 << 24);
    }
  }
}
