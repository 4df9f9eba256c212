package org.lehrcase.desk.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OwnerFilesTest {
  @TempDir Path folder;

  @Test
  void aFileIsReadableByItsOwnerOnly() throws IOException {
    Path file = folder.resolve("keys");
    OwnerFiles.write(file, new byte[] {1, 2, 3});
    assertThat(file).hasBinaryContent(new byte[] {1, 2, 3});
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-------");
    assertThat(folder).isDirectoryContaining(file::equals);
    assertThat(folder.resolve("keys.part")).doesNotExist();
  }

  @Test
  void aFileIsReplacedAsAWhole() throws IOException {
    Path file = folder.resolve("keys");
    OwnerFiles.write(file, new byte[1000]);
    OwnerFiles.write(file, new byte[] {9});
    assertThat(OwnerFiles.read(file, 10)).containsExactly(9);
  }

  @Test
  void whatAKilledProgramLeftIsReplaced() throws IOException {
    Path file = folder.resolve("keys");
    Files.write(folder.resolve("keys.part"), new byte[50]);
    OwnerFiles.write(file, new byte[] {9});
    assertThat(OwnerFiles.read(file, 10)).containsExactly(9);
  }

  @Test
  void aFailedWriteLeavesTheOldFile() throws IOException {
    Path file = folder.resolve("keys");
    Files.createDirectories(file.resolve("in the way"));
    assertThatThrownBy(() -> OwnerFiles.write(file, new byte[1])).isInstanceOf(IOException.class);
    assertThat(file.resolve("in the way")).isDirectory();
    assertThat(folder.resolve("keys.part")).doesNotExist();
  }

  @Test
  void longFilesAndLinksAreRefused() throws IOException {
    Path file = folder.resolve("long");
    OwnerFiles.write(file, new byte[11]);
    assertThatThrownBy(() -> OwnerFiles.read(file, 10)).isInstanceOf(IOException.class);
    Path link = Files.createSymbolicLink(folder.resolve("link"), file);
    assertThatThrownBy(() -> OwnerFiles.read(link, 100)).isInstanceOf(IOException.class);
    assertThatThrownBy(() -> OwnerFiles.read(folder.resolve("none"), 100))
        .isInstanceOf(IOException.class);
  }

  @Test
  void aFolderIsForItsOwnerOnly() throws IOException {
    Path made = folder.resolve("a").resolve("b");
    OwnerFiles.folder(made);
    OwnerFiles.folder(made);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(made)))
        .isEqualTo("rwx------");
  }
}
