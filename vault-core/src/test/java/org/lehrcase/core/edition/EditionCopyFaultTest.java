package org.lehrcase.core.edition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FailingMedium;
import org.lehrcase.core.file.FailingMedium.Way;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.seal.Progress;

/** A copy fails at every one of its steps in turn, and goes on afterwards. */
class EditionCopyFaultTest {
  @TempDir Path work;
  private SampleEdition sample;
  private EditionFolder from;
  private Map<String, Octets> stick;

  @BeforeEach
  void pack() throws Exception {
    sample = SampleEdition.pack(Files.createDirectory(work.resolve("stick")));
    from = sample.open();
    stick = files(sample.folder);
  }

  /** Every file below a folder by name, as the hash of its bytes; unfinished ones left out. */
  private static Map<String, Octets> files(Path root) throws IOException {
    Map<String, Octets> files = new TreeMap<>();
    try (var walk = Files.walk(root)) {
      for (Path file : walk.filter(Files::isRegularFile).toList()) {
        files.put(root.relativize(file).toString(), Octets.of(Sha256.of(SampleEdition.read(file))));
      }
    }
    files.keySet().removeIf(name -> name.endsWith(WholeFiles.UNFINISHED));
    return files;
  }

  private Path target(int number) {
    return work.resolve("copy" + number);
  }

  /** Returns whether the copy came to its end. */
  private boolean copied(Path target, FailingMedium medium) throws VaultException {
    try {
      EditionCopy.copy(from, target, new WholeFiles(medium), Progress.NONE);
      return true;
    } catch (IOException | FailingMedium.PowerGone e) {
      return false;
    }
  }

  private int steps() throws Exception {
    FailingMedium sound = new FailingMedium(Way.FULL, 0);
    assertThat(copied(target(0), sound)).isTrue();
    assertThat(files(target(0))).isEqualTo(stick);
    return sound.steps();
  }

  @ParameterizedTest
  @EnumSource(Way.class)
  void atEveryStepWhatIsInPlaceIsWholeAndTheCopyGoesOn(Way way) throws Exception {
    int steps = steps();
    assertThat(steps).isGreaterThan(40);
    for (int step = 1; step <= steps; step++) {
      Path target = target(step);
      boolean whole = copied(target, new FailingMedium(way, step));
      assertThat(whole).as("step %d", step).isFalse();
      assertThat(stick.entrySet()).as("step %d", step).containsAll(files(target).entrySet());
      assertThat(target.resolve(EditionLayout.FRONT_PAGE)).as("step %d", step).doesNotExist();
      EditionCopy.copy(from, target, Progress.NONE);
      assertThat(files(target)).as("after step %d", step).isEqualTo(stick);
    }
  }

  @Test
  void aCopyThatIsCutAgainAndAgainComesToItsEnd() throws Exception {
    Path target = target(1);
    int attempts = 0;
    while (!copied(target, new FailingMedium(Way.POWER_GONE, 9))) {
      attempts++;
      assertThat(attempts).isLessThan(60);
      assertThat(stick.entrySet()).containsAll(files(target).entrySet());
    }
    assertThat(attempts).isGreaterThan(3);
    assertThat(files(target)).isEqualTo(stick);
  }

  @Test
  void aFullDiskLeavesNoUnfinishedFile() throws Exception {
    int steps = steps();
    for (int step = 5; step < steps; step += 7) {
      Path target = target(step);
      copied(target, new FailingMedium(Way.FULL, step));
      try (var walk = Files.walk(target)) {
        assertThat(walk.filter(f -> f.toString().endsWith(WholeFiles.UNFINISHED)))
            .as("step %d", step)
            .isEmpty();
      }
    }
  }

  @Test
  void goingOnWritesOnlyWhatIsMissing() throws Exception {
    int steps = steps();
    FailingMedium again = new FailingMedium(Way.FULL, 0);
    assertThat(copied(target(0), again)).isTrue();
    assertThat(again.steps()).isZero();
    Files.delete(target(0).resolve(EditionLayout.CONTENTS));
    FailingMedium rest = new FailingMedium(Way.FULL, 0);
    assertThat(copied(target(0), rest)).isTrue();
    assertThat(rest.steps()).isBetween(1, 5).isLessThan(steps);
  }

  @Test
  void stoppingInsideAFileLeavesNoHalfOfIt() throws Exception {
    Path target = target(1);
    int[] calls = {0};
    assertThatThrownBy(() -> EditionCopy.copy(from, target, bytes -> ++calls[0] < 4))
        .isInstanceOf(CancellationException.class);
    assertThat(stick.entrySet()).containsAll(files(target).entrySet());
    try (var walk = Files.walk(target)) {
      assertThat(walk.filter(f -> f.toString().endsWith(WholeFiles.UNFINISHED))).isEmpty();
    }
    EditionCopy.copy(from, target, Progress.NONE);
    assertThat(files(target)).isEqualTo(stick);
  }

  @Test
  void aStickThatIsPulledWhileCopyingLeavesAHonestHalf() throws Exception {
    Path target = target(1);
    PartEntry film = sample.entry(sample.second, 0, 0);
    Progress pull =
        bytes -> {
          try {
            Files.deleteIfExists(sample.path(film));
          } catch (IOException e) {
            throw new AssertionError(e);
          }
          return true;
        };
    EditionCopy.copy(from, target, pull);
    EditionCheck check =
        EditionCheck.everyByte(EditionFolder.open(target, sample.roots()), Progress.NONE);
    assertThat(check.isDamaged()).isFalse();
    assertThat(check.isWhole()).isFalse();
  }

  @Test
  void aDigestListThatWasChangedOnTheStickIsNotCopied() throws Exception {
    Path film = sample.path(sample.entry(sample.second, 0, 0));
    Path list = film.resolveSibling(film.getFileName() + EditionLayout.DIGESTS_ENDING);
    SampleEdition.damage(list, 40);
    Path target = target(1);
    assertThatThrownBy(() -> EditionCopy.copy(from, target, Progress.NONE))
        .isInstanceOf(VaultException.Tampered.class);
    assertThat(target.resolve(EditionLayout.FRONT_PAGE)).doesNotExist();
  }

  @Test
  void aForeignFileInTheTargetIsNotOverwrittenThroughALink() throws Exception {
    Path victim = Files.write(work.resolve("victim"), new byte[] {1});
    Path target = Files.createDirectory(target(1));
    Files.createSymbolicLink(target.resolve("001"), work);
    assertThatThrownBy(() -> EditionCopy.copy(from, target, Progress.NONE))
        .isInstanceOf(IOException.class);
    assertThat(SampleEdition.read(victim)).containsExactly(1);
    assertThat(target.resolve(EditionLayout.FRONT_PAGE)).doesNotExist();
  }
}
