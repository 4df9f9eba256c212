package org.lehrcase.bench.courses;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.TinyBench;
import org.lehrcase.bench.fixture.TinyShop;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.EditionLayout;

/** What sticks do to a course: they vanish, come back elsewhere, are half copied or used again. */
class CoursesFaultTest {
  private static final int FILM_BYTES = 300_000;

  @TempDir Path folder;
  private TinyShop shop;
  private TinyShop.Packed edition;
  private Bench bench;

  @BeforeEach
  void own() throws Exception {
    shop = new TinyShop();
    edition = shop.pack(folder.resolve("a/brush"));
    bench =
        TinyBench.quick(
            folder.resolve("home"),
            OtherMachine.named("mine"),
            folder.resolve("a"),
            folder.resolve("b"));
    bench.courses().bringIn(edition.folder());
    TinyBench.license(bench, shop, shop.sell("Robin Invented"));
  }

  @AfterEach
  void close() throws IOException {
    bench.close();
  }

  /** Reads the whole film of the second lesson, as a player would. */
  private byte[] film() throws Exception {
    var clear = bench.courses().file(edition.id(), edition.file(AssetRole.VIDEO).id()).clear();
    ByteBuffer all = ByteBuffer.allocate(FILM_BYTES);
    while (all.hasRemaining()) {
      clear.readAt(all.position(), all);
    }
    return all.array();
  }

  private void assertPlays() throws Exception {
    assertThat(film()).isEqualTo(TinyShop.film(3, FILM_BYTES));
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  private static void cut(Path file, int left) throws IOException {
    byte[] bytes;
    try (var in = Files.newInputStream(file)) {
      bytes = in.readNBytes(left);
    }
    Files.write(file, bytes);
  }

  private Path filmPart() {
    var address = edition.file(AssetRole.VIDEO).parts().get(0).address();
    return edition.folder().resolve("002").resolve(EditionLayout.partName(address));
  }

  /** Something done to the folder of an edition. */
  private interface Deed {
    void to(CoursesFaultTest test, Path folder) throws Exception;
  }

  /** A fault and what the student is told: the class of the failure, and some of its words. */
  record Fault(String what, Deed deed, Class<? extends Exception> failure, String words) {
    @Override
    public String toString() {
      return what;
    }
  }

  static Stream<Fault> faults() {
    return Stream.of(
        new Fault("the folder is gone", (t, f) -> remove(f), Trouble.class, "is not here"),
        new Fault(
            "the front page is gone",
            (t, f) -> Files.delete(f.resolve(EditionLayout.FRONT_PAGE)),
            Trouble.class,
            "is not here"),
        new Fault(
            "the front page is a folder",
            (t, f) -> {
              Files.delete(f.resolve(EditionLayout.FRONT_PAGE));
              Files.createDirectory(f.resolve(EditionLayout.FRONT_PAGE));
            },
            Trouble.class,
            "is not here"),
        new Fault(
            "the front page is cut short",
            (t, f) -> cut(f.resolve(EditionLayout.FRONT_PAGE), 200),
            Trouble.class,
            "is not here"),
        new Fault(
            "the contents are not copied yet",
            (t, f) -> Files.delete(f.resolve(EditionLayout.CONTENTS)),
            VaultException.NotHere.class,
            ""),
        new Fault(
            "the contents are half copied",
            (t, f) -> cut(f.resolve(EditionLayout.CONTENTS), 100),
            VaultException.class,
            ""),
        new Fault(
            "the lesson is not copied yet",
            (t, f) -> remove(f.resolve("002")),
            VaultException.NotHere.class,
            ""),
        new Fault(
            "the film is not copied yet",
            (t, f) -> Files.delete(t.filmPart()),
            VaultException.NotHere.class,
            ""),
        new Fault(
            "the film is half copied", (t, f) -> cut(t.filmPart(), 150_000), Exception.class, ""),
        new Fault(
            "the film is a link to the film elsewhere",
            (t, f) -> {
              Path moved = t.folder.resolve("moved");
              Files.move(t.filmPart(), moved);
              Files.createSymbolicLink(t.filmPart(), moved);
            },
            VaultException.class,
            ""));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("faults")
  void aFaultIsToldAndTheWholeCopyPlaysAgain(Fault fault) throws Exception {
    TinyBench.copy(edition.folder(), folder.resolve("kept"));
    fault.deed().to(this, edition.folder());
    bench.courses().forgetAll();
    assertThatThrownBy(this::film)
        .isInstanceOf(fault.failure())
        .hasMessageContaining(fault.words());
    if (Files.exists(edition.folder())) {
      remove(edition.folder());
    }
    Files.move(folder.resolve("kept"), edition.folder());
    assertPlays();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("faults")
  void theCopyOnAnotherStickIsFoundIfThisOneIsAway(Fault fault) throws Exception {
    TinyBench.copy(edition.folder(), folder.resolve("b/anywhere/brush"));
    remove(edition.folder());
    bench.courses().forgetAll();
    assertPlays();
    assertThat(bench.courses().known()).hasSize(1);
    assertThat(bench.courses().known().get(0).folder()).startsWith(folder.resolve("b"));
  }

  @Test
  void twoCopiesAreOneCourseAndTheOtherServesWhenOneIsPulled() throws Exception {
    Path second = folder.resolve("b/brush");
    TinyBench.copy(edition.folder(), second);
    bench.courses().bringIn(second);
    assertThat(bench.courses().known()).hasSize(1);
    assertPlays();
    remove(second);
    bench.courses().forgetAll();
    assertPlays();
  }

  @Test
  void aDriveLetterThatChangesWhileTheFilmIsOpenIsFollowed() throws Exception {
    assertPlays();
    Files.move(folder.resolve("a"), folder.resolve("b"));
    assertPlays();
    assertThat(bench.courses().open(edition.id()).folder().roots().get(0))
        .isEqualTo(folder.resolve("b/brush"));
  }

  @Test
  void aFolderThatNowHoldsAnotherEditionIsNotTakenForThisOne() throws Exception {
    Files.move(edition.folder(), folder.resolve("drawer"));
    TinyShop.Packed next =
        shop.pack(
            edition.folder(),
            new TinyShop.Files2(TinyShop.film(8, 50_000), new byte[] {'%'}, new byte[0]));
    assertThatThrownBy(this::film).isInstanceOf(Trouble.class).hasMessageContaining("is not here");
    assertThat(next.id()).isNotEqualTo(edition.id());
    Files.createDirectories(folder.resolve("b"));
    Files.move(folder.resolve("drawer"), folder.resolve("b/brush"));
    assertPlays();
  }

  @Test
  void aFolderBehindALinkIsNotBroughtIn() throws Exception {
    Path link = folder.resolve("link");
    Files.createSymbolicLink(link, edition.folder());
    assertThatThrownBy(() -> bench.courses().bringIn(link))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("There is no edition");
  }

  @Test
  void aFolderWithAGoodAndABadEditionNamesTheBadOneAndKeepsNothingOfIt() throws Exception {
    TinyShop.Packed other = new TinyShop("Other").pack(folder.resolve("two/bad"));
    cut(other.folder().resolve(EditionLayout.FRONT_PAGE), 100);
    assertThatThrownBy(() -> bench.courses().bringIn(folder.resolve("two")))
        .isInstanceOf(VaultException.class);
    assertThat(bench.courses().known()).hasSize(1);
    assertThat(bench.roots().teachers()).hasSize(1);
  }

  @Test
  void afterTheDeskKeyWasReplacedAnOlderEditionIsNewToNobody() throws Exception {
    TinyShop.Packed stolen = shop.pack(folder.resolve("stolen"));
    shop.replaceDeskKey(List.of());
    TinyShop.Packed fresh = shop.pack(folder.resolve("fresh"));
    bench.courses().bringIn(fresh.folder());
    assertThatThrownBy(() -> bench.courses().bringIn(stolen.folder()))
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("was replaced by the teacher");
    assertPlays();
    bench.courses().bringIn(edition.folder());
    assertPlays();
  }

  @Test
  void anEditionOfTheOldKeyThatTheTeacherStillNamesIsWelcome() throws Exception {
    TinyShop.Packed named = shop.pack(folder.resolve("named"));
    var front = bench.courses().bringIn(named.folder()).get(0);
    try (Bench other = TinyBench.quick(folder.resolve("other home"), OtherMachine.named("other"))) {
      shop.replaceDeskKey(List.of(front.digest()));
      other.courses().bringIn(shop.pack(folder.resolve("fresh")).folder());
      assertThat(other.courses().bringIn(named.folder())).hasSize(1);
      assertThatThrownBy(() -> other.courses().bringIn(edition.folder()))
          .isInstanceOf(Trouble.class);
    }
  }
}
