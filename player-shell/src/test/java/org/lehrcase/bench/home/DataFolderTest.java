package org.lehrcase.bench.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DataFolderTest {
  private static final String ADDRESS = "http://127.0.0.1:4711/enter/" + "0a".repeat(16);

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "Linux, /u/.local/share/lehrcase, /u/.config/lehrcase",
    "Mac OS X, /u/Library/Application Support/Lehrcase, /u/Library/Preferences/Lehrcase",
    "Windows 11, /u/AppData/Local/Lehrcase, /u/AppData/Local/Lehrcase-laptop"
  })
  void everySystemHasItsUsualPlaceWithTheSecretOutside(String system, Path home, Path local) {
    DataPlace place = DataPlace.usual(system, Path.of("/u"), Map.of());
    assertThat(place).isEqualTo(new DataPlace(home, local));
    assertThat(place.local().startsWith(place.home())).isFalse();
  }

  @Test
  void theEnvironmentMayNameOtherFolders() {
    Map<String, String> environment = Map.of("XDG_DATA_HOME", "/d", "XDG_CONFIG_HOME", " ");
    assertThat(DataPlace.usual("Linux", Path.of("/u"), environment))
        .isEqualTo(new DataPlace(Path.of("/d/lehrcase"), Path.of("/u/.config/lehrcase")));
  }

  @Test
  void aNewDataFolderIsForItsOwnerOnly() throws Exception {
    Path home = folder.resolve("a/b/home");
    DataPlace place = new DataPlace(home, folder.resolve("local"));
    place.ensure();
    place.ensure();
    assertThat(rights(home)).isEqualTo("rwx------");
    assertThat(place.withHome(folder).local()).isEqualTo(place.local());
  }

  @Test
  void oneCopyRunsAndASecondFindsIt() throws Exception {
    try (RunningCopy running = RunningCopy.take(folder).orElseThrow()) {
      assertThat(RunningCopy.find(folder)).isEmpty();
      RunningCopy.Reach reach = new RunningCopy.Reach(4711, "ab".repeat(16));
      running.announce(reach);
      assertThat(RunningCopy.take(folder)).isEmpty();
      assertThat(RunningCopy.find(folder)).contains(reach);
      assertThat(rights(folder.resolve("bench.running"))).isEqualTo("rw-------");
      assertThat(reach.toString()).doesNotContain("abab");
    }
    assertThat(RunningCopy.find(folder)).isEmpty();
    Optional<RunningCopy> next = RunningCopy.take(folder);
    assertThat(next).isPresent();
    next.orElseThrow().close();
  }

  @Test
  void aSpoiledAnnouncementIsNoAddress() throws Exception {
    Files.writeString(folder.resolve("bench.running"), "not a port at all");
    assertThat(RunningCopy.find(folder)).isEmpty();
  }

  @Test
  void theEntryFileIsReadableByItsOwnerOnlyAndLeadsToTheAddress() throws Exception {
    Path file = EntryFile.write(folder, ADDRESS);
    EntryFile.write(folder, ADDRESS);
    assertThat(rights(file)).isEqualTo("rw-------");
    assertThat(text(file)).contains("url=" + ADDRESS).contains("no-referrer");
    EntryFile.remove(folder);
    assertThat(file).doesNotExist();
  }

  @Test
  void nothingButAOneTimeAddressGoesIntoTheEntryFile() {
    assertThatThrownBy(() -> EntryFile.write(folder, "http://evil.example/enter/00"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThat(folder.resolve("open-lehrcase.html")).doesNotExist();
  }

  private static String text(Path file) throws Exception {
    try (var in = Files.newInputStream(file)) {
      return new String(in.readNBytes(5000), StandardCharsets.UTF_8);
    }
  }

  private static String rights(Path file) throws Exception {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(file));
  }
}
