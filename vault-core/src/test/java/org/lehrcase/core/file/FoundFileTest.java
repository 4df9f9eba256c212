package org.lehrcase.core.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.VaultException;

class FoundFileTest {
  private static final byte[] FIVE = {10, 20, 30, 40, 50};

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void write() throws Exception {
    file = Files.write(folder.resolve("part"), FIVE);
  }

  @Test
  void aFileUpToTheLimitIsReadWhole() throws Exception {
    assertThat(FoundFile.read(file, 5)).isEqualTo(FIVE);
    assertThat(FoundFile.read(Files.createFile(folder.resolve("empty")), 0)).isEmpty();
  }

  @Test
  void oneByteMoreIsTooLarge() {
    assertThatThrownBy(() -> FoundFile.read(file, 4))
        .isInstanceOf(VaultException.TooLarge.class)
        .hasMessageContaining("part: 5 bytes, the limit is 4");
  }

  @Test
  void whatIsMissingIsNotHereInAMissingFolderToo() {
    assertThatThrownBy(() -> FoundFile.read(folder.resolve("none"), 5))
        .isInstanceOf(VaultException.NotHere.class)
        .hasMessageContaining("none");
    assertThatThrownBy(() -> FoundFile.read(folder.resolve("no").resolve("none"), 5))
        .isInstanceOf(VaultException.NotHere.class);
    assertThatThrownBy(() -> FoundFile.open(file.resolve("below-a-file"), 5))
        .isInstanceOf(VaultException.NotHere.class);
  }

  @Test
  void linksAndFoldersAreRefusedWhereverTheyLead() throws Exception {
    Path link = Files.createSymbolicLink(folder.resolve("link"), file);
    Path loose = Files.createSymbolicLink(folder.resolve("loose"), folder.resolve("none"));
    for (Path wrong : new Path[] {link, loose, folder}) {
      assertThatThrownBy(() -> FoundFile.read(wrong, 5))
          .as(wrong.toString())
          .isInstanceOf(VaultException.Malformed.class);
      assertThatThrownBy(() -> FoundFile.open(wrong, 5))
          .as(wrong.toString())
          .isInstanceOf(VaultException.Malformed.class);
    }
  }

  @Test
  void aFileOfTheExactLengthIsOpened() throws Exception {
    try (var source = FoundFile.open(file, 5)) {
      ByteBuffer two = ByteBuffer.allocate(2);
      source.readExactly(3, two);
      assertThat(two.array()).containsExactly(40, 50);
    }
  }

  @Test
  void anotherLengthIsToldAsShorterOrLonger() {
    assertThatThrownBy(() -> FoundFile.open(file, 6))
        .isInstanceOf(VaultException.Truncated.class)
        .hasMessageContaining("5 bytes, expected 6");
    assertThatThrownBy(() -> FoundFile.open(file, 4))
        .isInstanceOf(VaultException.Malformed.class)
        .hasMessageContaining("5 bytes, expected 4");
  }

  @Test
  void aLooseLinkExistsButIsNoFolder() throws Exception {
    Path loose = Files.createSymbolicLink(folder.resolve("loose"), folder.resolve("none"));
    Path toFolder = Files.createSymbolicLink(folder.resolve("round"), folder);
    assertThat(FoundFile.exists(loose)).isTrue();
    assertThat(FoundFile.exists(folder.resolve("none"))).isFalse();
    assertThat(FoundFile.isFolder(toFolder)).isFalse();
    assertThat(FoundFile.isFolder(folder)).isTrue();
  }
}
