package org.lehrcase.desk.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.core.seal.SealedPart;
import org.lehrcase.desk.home.TestDesk;

class PackerFaultTest {
  @TempDir Path folder;
  private TestDesk desk;
  private TinyCourse course;
  private Path out;
  private PackRun run;

  @BeforeEach
  void make() throws Exception {
    desk = TestDesk.fresh(folder.resolve("desk"));
    course = TinyCourse.in(folder.resolve("brush"));
    out = folder.resolve("editions");
    run = new PackRun(desk, out);
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  @ParameterizedTest(name = "failing after the act: {0}")
  @ValueSource(booleans = {false, true})
  void wheneverTheDiskFailsNothingHalfAppearsAndTheNextPackGoesOn(boolean afterTheAct)
      throws Exception {
    int editions = 0;
    boolean clean = false;
    for (int good = 0; !clean; good++) {
      FailingDisk disk = new FailingDisk(good, afterTheAct);
      course.write("03 Kelp/notes.md", "# Kelp\n\nVersion " + good + "\n");
      try {
        run.pack(course, disk);
        clean = !disk.failed();
      } catch (IOException e) {
        assertThat(e).hasMessageContaining("No space left");
      }
      everyEditionIsWhole();
      PackResult next = run.pack(course);
      editions = next.number();
      assertThat(run.isWhole(next.folder())).isTrue();
      assertThat(run.opened(next.folder()).read(notes(next), 1000))
          .asString()
          .contains("Version " + good);
      assertThat(out).isDirectoryNotContaining("glob:**.packing");
    }
    assertThat(editions).isGreaterThan(20);
  }

  @Test
  void tooLittleRoomIsSaidBeforeAnythingIsWritten() throws Exception {
    PackDisk small = new SmallDisk(100_000);
    assertThatThrownBy(() -> run.pack(course, small))
        .isInstanceOfSatisfying(
            PackException.class,
            e -> assertThat(e.reason()).isEqualTo(PackException.Reason.NO_SPACE));
    assertThat(out).isEmptyDirectory();
    assertThat(desk.book().editions().of("brush")).isEmpty();
  }

  @Test
  void anOutputThatCannotBeAFolderIsRefused() throws Exception {
    Files.writeString(out, "a file");
    assertThatThrownBy(() -> run.pack(course)).isInstanceOf(IOException.class);
    assertThat(out).hasContent("a file");
  }

  @Test
  void aSourceThatGrowsMeanwhileIsSaidAndThePackGoesOnLater() throws Exception {
    Path growing = course.folder().resolve("03 Kelp/kelp.png");
    PackDisk disk =
        new SmallDisk(Long.MAX_VALUE) {
          @Override
          public SealedPart seal(
              ByteSource clear, PartHeader header, PartKey key, Path target, Progress progress)
              throws IOException {
            Files.write(growing, new byte[1], java.nio.file.StandardOpenOption.APPEND);
            return super.seal(clear, header, key, target, progress);
          }
        };
    assertThatThrownBy(() -> run.pack(course, disk))
        .isInstanceOfSatisfying(
            PackException.class,
            e -> assertThat(e.reason()).isEqualTo(PackException.Reason.CHANGED_MEANWHILE))
        .hasMessageContaining("kelp.png");
    assertThat(run.isWhole(run.pack(course).folder())).isTrue();
  }

  @Test
  void anotherOutputAbandonsWhatWasBegun() throws Exception {
    assertThatThrownBy(() -> run.pack(course, new FailingDisk(12, false)))
        .isInstanceOf(IOException.class);
    Path elsewhere = folder.resolve("elsewhere");
    PackResult result = new PackRun(desk, elsewhere).pack(course);
    assertThat(result.folder().getParent()).isEqualTo(elsewhere.toRealPath());
    assertThat(out).isEmptyDirectory();
    assertThat(run.isWhole(result.folder())).isTrue();
  }

  @Test
  void aTornLineOfTheMemoryIsAsIfItWereNotThere() throws Exception {
    assertThatThrownBy(() -> run.pack(course, new FailingDisk(14, false)))
        .isInstanceOf(IOException.class);
    Path memory = onlyMemory();
    byte[] bytes = Files.readAllBytes(memory);
    Files.write(memory, java.util.Arrays.copyOf(bytes, bytes.length - 9));
    PackResult result = run.pack(course);
    assertThat(run.isWhole(result.folder())).isTrue();
    assertThat(run.opened(result.folder()).lessons()).hasSize(3);
  }

  @Test
  void whatIsFinishedIsNotSealedAgain() throws Exception {
    assertThatThrownBy(() -> run.pack(course, new FailingDisk(18, false)))
        .isInstanceOf(IOException.class);
    PackResult result = run.pack(course);
    assertThat(result.takenOverBytes()).isPositive();
  }

  private org.lehrcase.core.course.Asset notes(PackResult result) throws Exception {
    return run.opened(result.folder()).lessons().get(2).assets().stream()
        .filter(a -> a.name().equals("notes.md"))
        .findFirst()
        .orElseThrow();
  }

  private void everyEditionIsWhole() throws Exception {
    if (!Files.isDirectory(out)) {
      return;
    }
    List<Path> visible;
    try (Stream<Path> all = Files.list(out)) {
      visible = all.filter(p -> !p.getFileName().toString().startsWith(".")).toList();
    }
    for (Path edition : visible) {
      assertThat(run.isWhole(edition)).as(edition.toString()).isTrue();
    }
  }

  private Path onlyMemory() throws IOException {
    try (Stream<Path> all = Files.list(desk.home().packing())) {
      return all.filter(p -> p.toString().endsWith(".parts")).findFirst().orElseThrow();
    }
  }

  /** A disk of limited room. */
  private static class SmallDisk implements PackDisk {
    private final PackDisk real = new RealDisk(new SecureRandom());
    private final long free;

    SmallDisk(long free) {
      this.free = free;
    }

    @Override
    public void folder(Path made) throws IOException {
      real.folder(made);
    }

    @Override
    public long freeBytes(Path where) {
      return free;
    }

    @Override
    public SealedPart seal(
        ByteSource clear, PartHeader header, PartKey key, Path target, Progress progress)
        throws IOException {
      return real.seal(clear, header, key, target, progress);
    }

    @Override
    public void write(Path file, byte[] bytes) throws IOException {
      real.write(file, bytes);
    }

    @Override
    public void copy(Path from, Path file) throws IOException {
      real.copy(from, file);
    }

    @Override
    public void move(Path from, Path to) throws IOException {
      real.move(from, to);
    }

    @Override
    public void remove(Path path) throws IOException {
      real.remove(path);
    }
  }
}
