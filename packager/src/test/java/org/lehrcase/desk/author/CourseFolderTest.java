package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.MomentTarget;
import org.lehrcase.core.id.AssetId;

class CourseFolderTest {
  private static final String LESSON = "01 Looking into water/";

  @TempDir private Path folder;

  @Test
  void readsASeriesByItsConventions() throws Exception {
    var course = CourseOnDisk.sound(folder).read();

    assertThat(course.series()).isEqualTo("brush");
    assertThat(course.title()).isEqualTo("Brush");
    assertThat(course.teacher()).isEqualTo("A. Teacher");
    assertThat(course.printable()).isEqualTo(Set.of(AssetRole.HANDOUT, AssetRole.TEMPLATE));
    assertThat(course.findings()).isEmpty();
    assertThat(course.lessons()).hasSize(1);
    var lesson = course.lessons().get(0);
    assertThat(lesson.number()).isEqualTo(1);
    assertThat(lesson.title()).isEqualTo("Looking into water");
    assertThat(lesson.summary()).isEqualTo("Six sheets.");
    assertThat(lesson.block()).contains("First week");
    assertThat(lesson.open()).isTrue();
  }

  @Test
  void givesEveryFileItsRoleByItsName() throws Exception {
    var lesson = CourseOnDisk.sound(folder).read().lessons().get(0);

    assertThat(lesson.assets())
        .extracting(SourceAsset::role, SourceAsset::name, SourceAsset::mediaType)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(AssetRole.VIDEO, "film.mp4", "video/mp4"),
            org.assertj.core.groups.Tuple.tuple(AssetRole.CAPTIONS, "film.en.vtt", "text/vtt"),
            org.assertj.core.groups.Tuple.tuple(
                AssetRole.CHAPTERS, "film.chapters.txt", "text/plain"),
            org.assertj.core.groups.Tuple.tuple(
                AssetRole.HANDOUT, "handout.pdf", "application/pdf"),
            org.assertj.core.groups.Tuple.tuple(
                AssetRole.FIRING_SCHEDULE, "strips.firing.csv", "text/csv"),
            org.assertj.core.groups.Tuple.tuple(
                AssetRole.MATERIALS_LIST, "all.materials.csv", "text/csv"),
            org.assertj.core.groups.Tuple.tuple(
                AssetRole.TEMPLATE, "sheet 3.template.svg", "image/svg+xml"),
            org.assertj.core.groups.Tuple.tuple(
                AssetRole.TEMPLATE, "sheet 4.template.svg", "image/svg+xml"));
    assertThat(lesson.assets(AssetRole.CAPTIONS).findFirst().orElseThrow().language())
        .isEqualTo("en");
  }

  @Test
  void hangsPagesTemplatesAndListsOnTheMoments() throws Exception {
    var moments = CourseOnDisk.sound(folder).read().lessons().get(0).moments();

    assertThat(moments)
        .extracting(SourceMoment::atMillis, SourceMoment::target, SourceMoment::page)
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple(0L, MomentTarget.MATERIALS, 0),
            org.assertj.core.groups.Tuple.tuple(1000L, MomentTarget.PAGE, 2),
            org.assertj.core.groups.Tuple.tuple(1000L, MomentTarget.TEMPLATE, 0));
    assertThat(moments.get(2).asset().orElseThrow().name()).isEqualTo("sheet 4.template.svg");
    var id = AssetId.random(new SecureRandom());
    assertThat(moments.get(1).toMoment(a -> id).asset()).isEqualTo(Optional.of(id));
  }

  @Test
  void aFolderWithoutYamlSpeaksThroughItsNames() throws Exception {
    var course = new CourseOnDisk(folder).text("03 - First wash/notes.md", "# Wash").read();

    assertThat(course.series()).isEqualTo("brush");
    assertThat(course.title()).isEqualTo("Brush");
    assertThat(course.lessons().get(0).title()).isEqualTo("First wash");
    assertThat(course.lessons().get(0).number()).isEqualTo(3);
    assertThat(course.lessons().get(0).open()).isFalse();
    assertThat(course.lessons().get(0).block()).isEmpty();
  }

  @Test
  void theSeriesIdOfAFolderIsPlainLettersAndHyphens() {
    assertThat(CourseFactsReader.slug("Récif — Brush & Kiln!")).isEqualTo("recif-brush-kiln");
    assertThat(CourseFactsReader.slug("???")).isEqualTo("series");
    assertThat(CourseFactsReader.slug("a".repeat(31) + " b")).isEqualTo("a".repeat(31));
  }

  @Test
  void lessonsAndFilesComeInTheOrderOfTheirNumbers() throws Exception {
    var course =
        new CourseOnDisk(folder)
            .text("10 Ten/b10.md", "x")
            .text("10 Ten/B2.md", "x")
            .text("2 Two/a.md", "x")
            .text("1 One/a.md", "x")
            .read();

    assertThat(course.lessons()).extracting(SourceLesson::number).containsExactly(1, 2, 10);
    assertThat(course.lessons().get(2).assets())
        .extracting(SourceAsset::name)
        .containsExactly("B2.md", "b10.md");
  }

  @Test
  void tablesAreRecognisedByTheirHeaderRow() throws Exception {
    var lesson =
        new CourseOnDisk(folder)
            .text("01 A/one.csv", "\uFEFFitem;amount;unit;per\nbrush;1,5;;once\n")
            .text("01 A/two.csv", "step,rate_c_per_h,target_c,hold_min,note\na,200,580,10,\n")
            .read()
            .lessons()
            .get(0);

    assertThat(lesson.assets())
        .extracting(SourceAsset::role)
        .containsExactly(AssetRole.FIRING_SCHEDULE, AssetRole.MATERIALS_LIST);
  }

  @Test
  void whatOperatingSystemsLeaveBehindIsNotSeen() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(".DS_Store", "x")
            .text("._01 Looking into water", "x")
            .text(LESSON + "._film.mp4", "x")
            .text(LESSON + "Thumbs.db", "x")
            .text(LESSON + "~$notes.docx", "x")
            .text("System Volume Information/IndexerVolumeGuid", "x")
            .text("$RECYCLE.BIN/desktop.ini", "x")
            .read();

    assertThat(course.findings()).isEmpty();
    assertThat(course.lessons().get(0).assets()).hasSize(8);
  }

  @Test
  void aFilmOpensWithItsIndexInFront() throws Exception {
    var asset =
        CourseOnDisk.sound(folder)
            .sample(LESSON + "film.mp4", "index-at-end.mp4")
            .read()
            .lessons()
            .get(0)
            .assets()
            .get(0);
    var buffer = ByteBuffer.allocate(64);

    try (var source = asset.open()) {
      source.readExactly(0, buffer);
      assertThat(source.sizeBytes()).isEqualTo(Files.size(asset.file()));
    }

    var head = new String(buffer.array(), java.nio.charset.StandardCharsets.ISO_8859_1);
    assertThat(head).contains("ftyp").contains("moov");
  }

  @Test
  void aBrokenFilmDoesNotOpen() throws Exception {
    var asset =
        new CourseOnDisk(folder)
            .bytes("01 A/film.mp4", new byte[] {0, 0, 1, 0, 'm', 'd', 'a', 't', 0, 0, 0, 0})
            .read()
            .lessons()
            .get(0)
            .assets()
            .get(0);

    assertThatThrownBy(asset::open)
        .isInstanceOf(java.io.IOException.class)
        .hasMessageStartingWith("01 A/film.mp4: ");
  }

  @Test
  void aFolderThatIsNotThereIsSaidToBeMissing() {
    assertThatThrownBy(() -> CourseFolder.read(folder.resolve("nowhere")))
        .isInstanceOf(NoSuchFileException.class);
  }

  @Test
  void aFileIsNoCourseFolder() throws Exception {
    var file = Files.write(folder.resolve("file"), new byte[1]);

    assertThatThrownBy(() -> CourseFolder.read(file)).isInstanceOf(NotDirectoryException.class);
  }
}
