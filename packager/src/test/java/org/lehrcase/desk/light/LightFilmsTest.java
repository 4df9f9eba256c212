package org.lehrcase.desk.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.desk.author.CourseCheck;
import org.lehrcase.desk.author.SourceAsset;
import org.lehrcase.desk.author.SourceCourse;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.PackException;
import org.lehrcase.desk.pack.TinyCourse;

class LightFilmsTest {
  @TempDir Path folder;
  private final List<String> said = new ArrayList<>();
  private TestDesk desk;
  private TinyCourse course;
  private FakeCoder fake;

  @BeforeEach
  void make() throws Exception {
    desk = TestDesk.fresh(folder.resolve("desk"));
    course = TinyCourse.in(folder.resolve("brush"));
    fake = FakeCoder.in(folder.resolve("bin"));
    FakeCoder.film("too-large.mp4", film("01 Looking/look.mp4"));
    FakeCoder.film("sixty-frames.mp4", film("02 Far water/far.mp4"));
    FakeCoder.film("index-at-end.mp4", film("03 Kelp/kelp.mp4"));
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  private Path film(String place) {
    return folder.resolve("brush").resolve(place);
  }

  private LightShelf shelf() throws Exception {
    return LightShelf.of(desk.home());
  }

  private SourceCourse run() throws Exception {
    LightShelf shelf = shelf();
    LightMaker maker = new LightMaker(shelf, fake.program(), new Saying(said), System::nanoTime);
    return new LightFilms(shelf, Optional.of(maker)).of(CourseCheck.run(course.folder()).course());
  }

  private static List<String> films(SourceCourse course) {
    return course.lessons().stream()
        .flatMap(lesson -> lesson.assets(AssetRole.VIDEO))
        .map(film -> film.name() + " " + film.rendition())
        .toList();
  }

  @Test
  void eachLargerFilmGetsALightCopyBehindItAndASmallOneStaysAlone() throws Exception {
    SourceCourse light = run();
    assertThat(films(light))
        .containsExactly(
            "look.mp4 FULL",
            "look.light.mp4 LIGHT",
            "far.mp4 FULL",
            "far.light.mp4 LIGHT",
            "kelp.mp4 COMMON");
    assertThat(said.get(0)).startsWith("2 films are larger than a light copy; 2 copies are to");
    for (var lesson : light.lessons()) {
      for (SourceAsset film : lesson.assets(AssetRole.VIDEO).toList()) {
        assertThat(film.rendition() == Rendition.LIGHT)
            .isEqualTo(film.file().startsWith(shelf().folder()));
      }
    }
  }

  @Test
  void finishedCopiesAreNotMadeAgainWhateverTheFilmIsCalled() throws Exception {
    run();
    course.rename("01 Looking/look.mp4", "01 Looking/looking in.mp4");
    SourceCourse again = run();
    assertThat(fake.calls()).hasSize(2);
    assertThat(films(again)).contains("looking in.light.mp4 LIGHT");
  }

  @Test
  void theSameFilmTwiceNeedsOneCopy() throws Exception {
    FakeCoder.film("too-large.mp4", film("03 Kelp/look again.mp4"));
    assertThat(films(run())).contains("look again.light.mp4 LIGHT", "look.light.mp4 LIGHT");
    assertThat(fake.calls()).hasSize(2);
  }

  @Test
  void aChangedFilmGetsANewCopy() throws Exception {
    run();
    FakeCoder.film("sixty-frames.mp4", film("01 Looking/look.mp4"));
    run();
    assertThat(fake.calls()).as("its bytes have a copy already").hasSize(2);
    Files.write(film("01 Looking/look.mp4"), withTail("too-large.mp4"));
    run();
    assertThat(fake.calls()).hasSize(3);
  }

  /** The same film with a box behind its end that players pass over. */
  private byte[] withTail(String sample) throws Exception {
    Path other = folder.resolve("other.mp4");
    FakeCoder.film(sample, other);
    byte[] film = Files.readAllBytes(other);
    byte[] longer = java.util.Arrays.copyOf(film, film.length + 8);
    System.arraycopy(new byte[] {0, 0, 0, 8, 'f', 'r', 'e', 'e'}, 0, longer, film.length, 8);
    return longer;
  }

  @Test
  void anEncoderThatIsKilledLosesOnlyTheFilmInFlight() throws Exception {
    fake.does("cat " + fake.small() + " > \"$target\"; case \"$film\" in *far*) kill -9 $$;; esac");
    assertThatThrownBy(this::run)
        .isInstanceOf(PackException.class)
        .hasMessageContainingAll("02 Far water/far.mp4", "code 137", "the 1 light copies", "kept");
    assertThat(shelf().films()).hasSize(1);
    assertThat(shelf().unfinished()).doesNotExist();
    fake.does("cat " + fake.small() + " > \"$target\"");
    run();
    assertThat(fake.calls()).hasSize(3);
    assertThat(shelf().films()).hasSize(2);
  }

  @Test
  void whatAKilledDeskLeftIsEndedAndRemoved() throws Exception {
    Process left = new ProcessBuilder("sleep", "600").start();
    LightShelf shelf = shelf();
    Files.write(shelf.unfinished(), "half".getBytes(StandardCharsets.UTF_8));
    shelf.note(left.toHandle());
    LightShelf next = shelf();
    assertThat(left.waitFor(20, TimeUnit.SECONDS)).isTrue();
    assertThat(next.unfinished()).doesNotExist();
  }

  @Test
  void anotherProgramWithTheSameNumberIsLeftAlone() throws Exception {
    Process other = new ProcessBuilder("sleep", "600").start();
    try {
      Files.writeString(shelf().folder().resolve("encoder"), other.pid() + " 12345");
      shelf();
      assertThat(other.waitFor(200, TimeUnit.MILLISECONDS)).isFalse();
    } finally {
      other.destroyForcibly().waitFor();
    }
  }

  @Test
  void aFailureIsToldInTheEncodersWordsWithWhatIsKept() {
    assertThatThrownBy(
            () -> {
              fake.does("echo \"Unknown encoder 'libx264'\" >&2; exit 1");
              run();
            })
        .isInstanceOf(PackException.class)
        .hasMessageContainingAll("look.mp4", "code 1", "Unknown encoder", "Nothing was packed");
  }

  @Test
  void successWithoutAFilmIsNone() throws Exception {
    fake.does("exit 0");
    assertThatThrownBy(this::run).hasMessageContaining("code 0 and said nothing");
    assertThat(shelf().films()).isEmpty();
  }

  @Test
  void whatIsMadeIsHeldToTheSameCheckAsEveryFilm() throws Exception {
    FakeCoder.film("hevc-ten-bit.mp4", fake.small());
    assertThatThrownBy(this::run).hasMessageContainingAll("What ffmpeg made", "HEVC");
    Files.write(fake.small(), new byte[100]);
    assertThatThrownBy(this::run).hasMessageContaining("What ffmpeg made");
    assertThat(shelf().films()).isEmpty();
  }

  @Test
  void withoutAnEncoderTheRecipeIsPrintedAndACourseOfSmallFilmsNeedsNone() throws Exception {
    LightFilms none = new LightFilms(shelf(), Optional.empty());
    assertThatThrownBy(() -> none.of(CourseCheck.run(course.folder()).course()))
        .isInstanceOf(PackException.class)
        .hasMessageContainingAll("none was found", "Nothing was packed", "1280 x 720", "--ffmpeg");
    Files.delete(film("01 Looking/look.mp4"));
    Files.delete(film("02 Far water/far.mp4"));
    SourceCourse small = CourseCheck.run(course.folder()).course();
    assertThat(films(none.of(small))).containsExactly("kelp.mp4 COMMON");
  }

  @Test
  void aCopyMadeByHandIsTakenAndNeedsNoEncoder() throws Exception {
    FakeCoder.film("index-in-front.mp4", film("01 Looking/look.light.mp4"));
    FakeCoder.film("index-in-front.mp4", film("02 Far water/far.light.mp4"));
    SourceCourse read = CourseCheck.run(course.folder()).course();
    SourceCourse light = new LightFilms(shelf(), Optional.empty()).of(read);
    assertThat(light).isEqualTo(read);
    assertThat(films(light)).startsWith("look.mp4 FULL", "look.light.mp4 LIGHT");
  }
}
