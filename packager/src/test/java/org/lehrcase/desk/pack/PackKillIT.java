package org.lehrcase.desk.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.desk.home.TestDesk;

/** Ends a packing program without warning at 50 random moments. */
class PackKillIT {
  private static final int KILLS = 50;
  private static final int SALT_FROM = 41;
  private static final int SALT_TO = 73;

  @TempDir Path folder;
  private final long seed = System.nanoTime();
  private final Random moments = new Random(seed);
  private final Map<Octets, Octets> clearByKeyAndSalt = new HashMap<>();
  private TinyCourse course;
  private Path home;
  private Path out;

  @BeforeEach
  void make() throws Exception {
    home = folder.resolve("desk");
    out = folder.resolve("editions");
    TestDesk.make(home);
    course = TinyCourse.in(folder.resolve("brush"));
    for (int i = 0; i < 12; i++) {
      course.noise("02 Far water/study " + i + ".png", 100 + i, 900_000);
    }
  }

  @Test
  void noKillLeavesABrokenEditionOrUsesAKeyTwice() throws Exception {
    System.out.println("seed of the moments: " + seed);
    long whole = packInChild(Long.MAX_VALUE);
    int killed = 0;
    for (int round = 0; killed < KILLS; round++) {
      course.write("03 Kelp/notes.md", "# Kelp\n\nRound " + round + "\n");
      course.noise("02 Far water/study " + round % 12 + ".png", 1000 + round, 900_000);
      for (int attempt = 0; attempt < 4 && killed < KILLS; attempt++) {
        long took = packInChild((long) (moments.nextDouble() * whole));
        killed += took < 0 ? 1 : 0;
        everyEditionIsWhole();
        checkKeys();
      }
      assertThat(packInChild(Long.MAX_VALUE)).as("it always completes").isPositive();
      everyEditionIsWhole();
      checkKeys();
      assertThat(out).isDirectoryNotContaining("glob:**.packing");
      newestSays("Round " + round);
    }
  }

  /** Returns how long the child was alive once it was ready, or -1 if it was killed. */
  private long packInChild(long aliveNanos) throws Exception {
    Path log = folder.resolve("child.log");
    Process child =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                PackChild.class.getName(),
                home.toString(),
                course.folder().toString(),
                out.toString())
            .redirectError(log.toFile())
            .start();
    assertThat(child.getInputStream().read()).as(() -> text(log)).isEqualTo('r');
    long ready = System.nanoTime();
    if (!child.waitFor(Math.min(aliveNanos, 120_000_000_000L), TimeUnit.NANOSECONDS)) {
      child.destroyForcibly().waitFor();
      return -1;
    }
    assertThat(child.exitValue()).as(() -> text(log)).isZero();
    return System.nanoTime() - ready;
  }

  private static String text(Path log) {
    try {
      return Files.readString(log);
    } catch (IOException e) {
      return e.toString();
    }
  }

  private void everyEditionIsWhole() throws Exception {
    if (!Files.isDirectory(out)) {
      return;
    }
    try (TestDesk desk = TestDesk.open(home)) {
      PackRun run = new PackRun(desk, out);
      for (Path edition : visible()) {
        assertThat(run.isWhole(edition)).as(edition + ", seed " + seed).isTrue();
      }
    }
  }

  private List<Path> visible() throws IOException {
    try (Stream<Path> all = Files.list(out)) {
      return all.filter(p -> !p.getFileName().toString().startsWith(".")).toList();
    }
  }

  private void newestSays(String words) throws Exception {
    try (TestDesk desk = TestDesk.open(home)) {
      Path newest = Path.of(desk.book().editions().newest("brush").orElseThrow().folder());
      OpenedEdition edition = new PackRun(desk, out).opened(newest);
      Lesson kelp = edition.lessons().get(2);
      Asset notes =
          kelp.assets().stream().filter(a -> a.name().equals("notes.md")).findFirst().orElseThrow();
      assertThat(new String(edition.read(notes, 1000), StandardCharsets.UTF_8)).contains(words);
    }
  }

  /** Every key and salt that ever lay on the disk belongs to one clear text. */
  private void checkKeys() throws Exception {
    try (TestDesk desk = TestDesk.open(home);
        MemoryKey memoryKey = MemoryKey.of(desk.keys().master(0))) {
      List<KnownPart> known = new ArrayList<>();
      try (Stream<Path> files = Files.list(desk.home().packing())) {
        for (Path file : files.filter(f -> f.toString().endsWith(".parts")).toList()) {
          for (List<KnownPart> parts : PackMemory.read(file, memoryKey).parts().values()) {
            known.addAll(parts);
          }
        }
      }
      for (KnownPart part : known) {
        checkPart(part);
      }
      for (Path edition : Files.isDirectory(out) ? visible() : List.<Path>of()) {
        checkContents(desk, edition);
      }
    }
  }

  private void checkPart(KnownPart part) throws IOException {
    Path file = find(part.ref());
    if (file != null) {
      remember(part.ref().key(), Files.readAllBytes(file), part.print());
    }
  }

  private void checkContents(TestDesk desk, Path folder) throws Exception {
    EditionFolder edition =
        EditionFolder.open(folder, TrustedRoots.pinned(desk.home().statement().root()));
    byte[] sealed = Files.readAllBytes(folder.resolve(EditionLayout.CONTENTS));
    try (EditionKey key = desk.keys().master(0).editionKey(edition.frontPage().edition());
        PartKey contents = key.contentsKey(edition.frontPage().edition())) {
      remember(contents, sealed, Octets.of(Sha256.of(sealed)));
    }
  }

  private void remember(PartKey key, byte[] sealed, Octets clear) {
    byte[] salt = java.util.Arrays.copyOfRange(sealed, SALT_FROM, SALT_TO);
    Octets pair = Octets.of(key.use(raw -> Sha256.of(raw, salt)));
    Octets before = clearByKeyAndSalt.putIfAbsent(pair, clear);
    assertThat(before == null || before.equals(clear)).as("seed " + seed).isTrue();
  }

  private Path find(PartRef ref) throws IOException {
    if (!Files.isDirectory(out)) {
      return null;
    }
    try (Stream<Path> all = Files.walk(out)) {
      return all.filter(p -> p.getFileName().toString().equals(ref.address().hex()))
          .findFirst()
          .orElse(null);
    }
  }
}
