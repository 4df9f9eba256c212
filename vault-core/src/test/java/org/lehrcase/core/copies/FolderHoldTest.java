package org.lehrcase.core.copies;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FolderHoldTest {
  @TempDir Path folder;

  @Test
  void oneCopyingAtATimeAndNothingStays() throws Exception {
    Path target = folder.resolve("kept/edition");
    try (FolderHold first = FolderHold.take(target)) {
      assertThat(first).isNotNull();
      assertThatThrownBy(() -> FolderHold.take(target))
          .isInstanceOf(IOException.class)
          .hasMessageContaining("another copying is at work");
    }
    assertThat(target).isEmptyDirectory();
    FolderHold.take(target).close();
  }

  @Test
  void aLockFileLeftByAKilledProgramHoldsNobodyUp() throws Exception {
    java.nio.file.Files.createFile(folder.resolve("copying.part"));
    FolderHold.take(folder).close();
    assertThat(folder).isEmptyDirectory();
  }
}
