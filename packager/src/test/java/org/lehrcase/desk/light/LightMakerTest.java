package org.lehrcase.desk.light;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.desk.author.CourseCheck;
import org.lehrcase.desk.author.SourceAsset;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.TinyCourse;

class LightMakerTest {
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
    FakeCoder.film("too-large.mp4", course.folder().resolve("01 Looking/look.mp4"));
    FakeCoder.film("sixty-frames.mp4", course.folder().resolve("02 Far water/far.mp4"));
  }

  @AfterEach
  void close() throws Exception {
    desk.close();
  }

  private LightShelf shelf() throws Exception {
    return LightShelf.of(desk.home());
  }

  @Test
  void aCopyThatEndsEarlyIsRefused() throws Exception {
    LightShelf shelf = shelf();
    SourceAsset source =
        CourseCheck.run(course.folder())
            .course()
            .lessons()
            .get(1)
            .assets(AssetRole.VIDEO)
            .findFirst()
            .orElseThrow();
    LightWork tenSeconds =
        new LightWork(source, LightRecipeTest.film(1920, 1080, 25, 9), shelf.place(source));
    LightMaker maker = new LightMaker(shelf, fake.program(), PackListener.NONE, System::nanoTime);
    assertThatThrownBy(() -> maker.make(List.of(tenSeconds), 1))
        .hasMessageContaining("What ffmpeg made ends at 2 s");
    assertThat(shelf.films()).isEmpty();
  }

  @Test
  void aLongFilmIsMeasuredFirst() throws Exception {
    LightShelf shelf = shelf();
    SourceAsset source =
        CourseCheck.run(course.folder())
            .course()
            .lessons()
            .get(0)
            .assets(AssetRole.VIDEO)
            .findFirst()
            .orElseThrow();
    var ten = LightRecipeTest.film(2560, 1440, 25, 9);
    var long600 =
        new org.lehrcase.desk.media.MediaInfo(
            ten.container(), 1000, 600_000, ten.index(), ten.tracks());
    List<Long> clock = new ArrayList<>(List.of(0L, 3_000_000_000L));
    LightMaker maker =
        new LightMaker(
            shelf,
            fake.program(),
            new Saying(said),
            () -> clock.isEmpty() ? 3_000_000_000L : clock.remove(0));
    assertThatThrownBy(
            () -> maker.make(List.of(new LightWork(source, long600, shelf.place(source))), 1))
        .hasMessageContaining("ends at 2 s");
    assertThat(fake.calls().get(0)).contains("-ss 297.000 -t 6.000");
    long bytes = Files.size(fake.small()) * 100;
    assertThat(said.get(1))
        .contains("about 5 min 0 s of work", Long.toString(bytes).substring(0, 1), "kept in");
  }

  @Test
  void progressIsSaidEveryFewSecondsWithTheTimeLeft() throws Exception {
    SourceAsset source =
        CourseCheck.run(course.folder())
            .course()
            .lessons()
            .get(0)
            .assets(AssetRole.VIDEO)
            .findFirst()
            .orElseThrow();
    LightWork work =
        new LightWork(source, LightRecipeTest.film(1920, 1080, 25, 9), Path.of("kept"));
    long[] now = {0};
    LightProgress progress = new LightProgress(new Saying(said), () -> now[0], 20);
    now[0] = 4_000_000_000L;
    progress.reached(work, 1000);
    assertThat(said).isEmpty();
    now[0] = 10_000_000_000L;
    progress.reached(work, 5000);
    progress.finished(work);
    now[0] = 20_000_000_000L;
    progress.reached(work, 5000);
    assertThat(said)
        .containsExactly(
            "light copies: 25 %, now 01 Looking/look.mp4, 30 s left",
            "light copies: 75 %, now 01 Looking/look.mp4, 7 s left");
  }
}
