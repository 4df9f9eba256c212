package org.lehrcase.desk.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;
import org.lehrcase.desk.envelopes.SpareKeys;

class DeskHomeTest {
  @TempDir Path folder;

  @Test
  void aNewDeskIsWholeAndForItsOwnerOnly() throws Exception {
    Path home = folder.resolve("desk");
    TestDesk.make(home);
    assertThat(rights(home)).isEqualTo("rwx------");
    for (String name : List.of("desk-keys", "statement", "sales.db")) {
      assertThat(rights(home.resolve(name))).isEqualTo("rw-------");
    }
    assertThat(folder)
        .isDirectoryContaining(home::equals)
        .isDirectoryNotContaining("glob:*.making");
    try (TestDesk desk = TestDesk.open(home)) {
      assertThat(desk.home().statement().terms().name()).isEqualTo("Atelier Test");
      assertThat(desk.book().events().all()).hasSize(1);
      assertThat(desk.home().packing()).isDirectory();
    }
  }

  @Test
  void theEnvelopesRebuildTheKeysAndTheRootIsInNoFile() throws Exception {
    Path home = folder.resolve("desk");
    List<List<String>> envelopes;
    try (NewDesk desk = NewDesk.prepare(home, "Atelier", new SecureRandom())) {
      envelopes = desk.envelopes();
      desk.settle(TestDesk.passphrase(), TestDesk.QUICK, TestDesk.CLOCK);
    }
    try (var root = SpareKeys.join(envelopes.subList(1, 3));
        TestDesk desk = TestDesk.open(home)) {
      assertThat(desk.keys().closing(0).check()).isEqualTo(root.closingKey(0).check());
      String secret = root.secret().use(raw -> new String(raw, StandardCharsets.ISO_8859_1));
      try (Stream<Path> files = Files.list(home)) {
        for (Path file : files.filter(Files::isRegularFile).toList()) {
          assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
              .doesNotContain(secret);
        }
      }
    }
  }

  @Test
  void aPlaceThatIsTakenIsLeftAlone() throws Exception {
    Path home = Files.createDirectory(folder.resolve("desk"));
    Files.writeString(home.resolve("holiday.txt"), "sun");
    assertThatThrownBy(() -> TestDesk.make(home)).isInstanceOf(DeskHomeException.NotAHome.class);
    assertThat(home).isDirectoryContaining("glob:**holiday.txt");
    Files.delete(home.resolve("holiday.txt"));
    TestDesk.make(home);
    assertThatThrownBy(() -> TestDesk.make(home)).isInstanceOf(DeskHomeException.NotAHome.class);
  }

  @Test
  void aNameOfTwoLinesIsRefused() {
    assertThatThrownBy(
            () -> NewDesk.prepare(folder.resolve("desk"), "One\nTwo", new SecureRandom()))
        .isInstanceOf(VaultException.class);
  }

  @Test
  void whatAKilledInitLeftIsClearedAway() throws Exception {
    Path staging = Files.createDirectory(folder.resolve("desk.making"));
    Files.writeString(staging.resolve("sales.db"), "half");
    TestDesk.make(folder.resolve("desk"));
    assertThat(staging).doesNotExist();
  }

  @Test
  void aSecondDeskIsKeptOut() throws Exception {
    Path home = folder.resolve("desk");
    try (TestDesk first = TestDesk.fresh(home)) {
      assertThat(first.home().book().licenses().all()).isEmpty();
      assertThatThrownBy(() -> DeskHome.open(home, TestDesk.CLOCK))
          .isInstanceOf(DeskHomeException.InUse.class);
    }
    TestDesk.open(home).close();
  }

  @Test
  void aDeskInAnotherProgramIsKeptOutToo() throws Exception {
    Path home = folder.resolve("desk");
    TestDesk.make(home);
    Process other =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                HoldDesk.class.getName(),
                home.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try {
      assertThat(other.getInputStream().read()).isEqualTo('h');
      assertThatThrownBy(() -> DeskHome.open(home, TestDesk.CLOCK))
          .isInstanceOf(DeskHomeException.InUse.class);
    } finally {
      other.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
    }
    TestDesk.open(home).close();
  }

  @Test
  void noDeskIsNamedAsSuch() {
    assertThatThrownBy(() -> DeskHome.open(folder, TestDesk.CLOCK))
        .isInstanceOf(DeskHomeException.NotAHome.class)
        .hasMessageContaining("init");
    assertThat(folder.resolve("lock")).doesNotExist();
  }

  @Test
  void aWrongPassphraseIsSaid() throws Exception {
    TestDesk.make(folder.resolve("desk"));
    try (DeskHome home = DeskHome.open(folder.resolve("desk"), TestDesk.CLOCK)) {
      assertThatThrownBy(() -> home.unlock(Passphrase.taking("something else".toCharArray())))
          .isInstanceOf(DeskHomeException.WrongPassphrase.class);
    }
  }

  @Test
  void keysAndStatementOfTwoDesksAreNotMixed() throws Exception {
    TestDesk.make(folder.resolve("one"));
    TestDesk.make(folder.resolve("two"));
    Files.copy(
        folder.resolve("two/statement"),
        folder.resolve("one/statement"),
        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    try (DeskHome home = DeskHome.open(folder.resolve("one"), TestDesk.CLOCK)) {
      assertThatThrownBy(() -> home.unlock(TestDesk.passphrase()))
          .isInstanceOf(DeskHomeException.Damaged.class);
    }
  }

  @Test
  void aDamagedStatementIsNamedAndTheLockIsGivenBack() throws Exception {
    Path home = folder.resolve("desk");
    TestDesk.make(home);
    byte[] statement = Files.readAllBytes(home.resolve("statement"));
    byte[] bad = statement.clone();
    bad[bad.length - 1] ^= 1;
    Files.write(home.resolve("statement"), bad);
    assertThatThrownBy(() -> DeskHome.open(home, TestDesk.CLOCK))
        .isInstanceOf(DeskHomeException.Damaged.class);
    Files.write(home.resolve("statement"), statement);
    TestDesk.open(home).close();
  }

  private static String rights(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }
}
