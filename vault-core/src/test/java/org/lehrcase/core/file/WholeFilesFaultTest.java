package org.lehrcase.core.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FailingMedium.Way;

class WholeFilesFaultTest {
  private static final byte[] BEFORE = {1, 2, 3};
  private static final byte[] AFTER = {4, 5, 6, 7};

  @TempDir Path folder;

  private static byte[] read(Path file) throws IOException, VaultException {
    return FoundFile.read(file, 100);
  }

  private List<String> names() throws IOException {
    try (var files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void aNewFileIsWholeAndLeavesNothingBeside() throws Exception {
    WholeFiles.ON_SYSTEM.put(folder.resolve("a"), AFTER);
    assertThat(read(folder.resolve("a"))).isEqualTo(AFTER);
    assertThat(names()).containsExactly("a");
  }

  @ParameterizedTest
  @EnumSource(Way.class)
  void atEveryStepThePlaceHoldsTheOldFileOrTheNewOne(Way way) throws Exception {
    Path place = folder.resolve("a");
    int step = 0;
    boolean clean = false;
    while (!clean) {
      step++;
      WholeFiles.ON_SYSTEM.put(place, BEFORE);
      FailingMedium medium = new FailingMedium(way, step);
      try {
        new WholeFiles(medium).put(place, AFTER);
        clean = !medium.failed();
        assertThat(read(place)).isEqualTo(AFTER);
      } catch (IOException | FailingMedium.PowerGone e) {
        assertThat(read(place)).as("step %d", step).isEqualTo(BEFORE);
      }
    }
    assertThat(step).isGreaterThan(4);
  }

  @Test
  void aFullMediumLeavesNoRestBehind() throws Exception {
    for (int step = 1; step <= 4; step++) {
      var files = new WholeFiles(new FailingMedium(Way.FULL, step));
      assertThatThrownBy(() -> files.put(folder.resolve("a"), AFTER))
          .isInstanceOf(IOException.class)
          .hasMessageContaining("No space left");
      assertThat(names()).as("step %d", step).isEmpty();
    }
  }

  @Test
  void theRestOfAPowerCutIsThrownAwayByTheNextAttempt() throws Exception {
    var files = new WholeFiles(new FailingMedium(Way.POWER_GONE, 3));
    assertThatThrownBy(() -> files.put(folder.resolve("a"), AFTER))
        .isInstanceOf(FailingMedium.PowerGone.class);
    assertThat(names()).containsExactly("a" + WholeFiles.UNFINISHED);
    WholeFiles.ON_SYSTEM.put(folder.resolve("a"), BEFORE);
    assertThat(names()).containsExactly("a");
    assertThat(read(folder.resolve("a"))).isEqualTo(BEFORE);
  }

  @Test
  void contentThatTurnsOutWrongHalfWayIsNotPut() throws Exception {
    Path place = folder.resolve("a");
    WholeFiles.Content wrong =
        sink -> {
          sink.write(ByteBuffer.wrap(AFTER));
          throw new VaultException.Tampered("the source changed");
        };
    assertThatThrownBy(() -> WholeFiles.ON_SYSTEM.put(place, wrong))
        .isInstanceOf(VaultException.Tampered.class);
    assertThat(names()).isEmpty();
  }

  @Test
  void whatFailedFirstIsToldAndTheFailedClearingUpOnlyAdded() {
    Medium stuck =
        new Medium() {
          @Override
          public void createFolder(Path path) {}

          @Override
          public Sink create(Path file) throws IOException {
            throw new IOException("read-only");
          }

          @Override
          public Sink resume(Path file, long keptBytes) throws IOException {
            return SYSTEM.resume(file, keptBytes);
          }

          @Override
          public void move(Path from, Path to) {}

          @Override
          public void delete(Path file) throws IOException {
            throw new IOException("still read-only");
          }
        };
    assertThatThrownBy(() -> new WholeFiles(stuck).put(folder.resolve("a"), AFTER))
        .hasMessage("read-only")
        .satisfies(e -> assertThat(e.getSuppressed()[0]).hasMessage("still read-only"));
  }

  @Test
  void whatLiesThereStaysIfOnlyAbsenceIsFilled() throws Exception {
    Path place = folder.resolve("a");
    WholeFiles.ON_SYSTEM.putIfAbsent(place, BEFORE);
    WholeFiles.ON_SYSTEM.putIfAbsent(place, AFTER);
    assertThat(read(place)).isEqualTo(BEFORE);
  }

  @Test
  void aFolderIsMadeOnceAndNeverThroughALink() throws Exception {
    Path made = WholeFiles.ON_SYSTEM.folder(folder, "keys");
    assertThat(made).isDirectory().isEqualTo(WholeFiles.ON_SYSTEM.folder(folder, "keys"));
    Files.createSymbolicLink(folder.resolve("001"), made);
    assertThatThrownBy(() -> WholeFiles.ON_SYSTEM.folder(folder, "001"))
        .isInstanceOf(IOException.class);
  }
}
