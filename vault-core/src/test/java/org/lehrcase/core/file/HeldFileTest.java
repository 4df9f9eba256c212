package org.lehrcase.core.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.file.FaultyDisk.Act;

/**
 * A program that looks for viruses opens each new file, and for a moment nobody else may have it.
 */
class HeldFileTest {
  private static final byte[] BEFORE = {1, 2, 3};
  private static final byte[] AFTER = {4, 5, 6, 7};

  @TempDir Path folder;
  private int held;
  private int asked;

  private Path seen(Act act, IOException refusal) {
    return FaultyDisk.at(
        folder,
        (done, path) -> {
          if (done == act && ++asked <= held) {
            throw refusal;
          }
        });
  }

  private List<String> names() throws IOException {
    try (var files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void aNewFileThatIsHeldGetsItsPlaceWhenItIsLetGo() throws Exception {
    held = 3;
    Path place = seen(Act.MOVE, new AccessDeniedException("a")).resolve("a");
    WholeFiles.ON_SYSTEM.put(place, AFTER);
    assertThat(FoundFile.read(folder.resolve("a"), 9)).isEqualTo(AFTER);
    assertThat(names()).containsExactly("a");
  }

  /** Windows says this of a file in use: no class of its own, only words. */
  @Test
  void aFileInUseIsWaitedForAsWell() throws Exception {
    held = 2;
    IOException inUse =
        new FileSystemException("a", null, "The process cannot access the file: it is in use");
    WholeFiles.ON_SYSTEM.put(seen(Act.MOVE, inUse).resolve("a"), AFTER);
    assertThat(FoundFile.read(folder.resolve("a"), 9)).isEqualTo(AFTER);
  }

  @Test
  void aHeldFileIsRemovedWhenItIsLetGo() throws Exception {
    Files.write(folder.resolve("a"), BEFORE);
    held = 2;
    Medium.SYSTEM.delete(seen(Act.DELETE, new AccessDeniedException("a")).resolve("a"));
    assertThat(names()).isEmpty();
  }

  @Test
  void aFileThatIsNotLetGoLeavesTheOldOneInItsPlace() throws Exception {
    Files.write(folder.resolve("a"), BEFORE);
    held = 99;
    Path place = seen(Act.MOVE, new AccessDeniedException("a")).resolve("a");
    assertThatThrownBy(() -> WholeFiles.ON_SYSTEM.put(place, AFTER))
        .isInstanceOf(AccessDeniedException.class);
    assertThat(asked).isBetween(3, 9);
    assertThat(FoundFile.read(folder.resolve("a"), 9)).isEqualTo(BEFORE);
    assertThat(names()).containsExactly("a");
  }
}
