package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.edition.PartState;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.light.FakeCoder;
import org.lehrcase.desk.light.FilmCoder;
import org.lehrcase.desk.media.MediaInfo;
import org.lehrcase.desk.media.MediaProbe;
import org.lehrcase.desk.pack.TinyCourse;

class PackLightTest {
  @TempDir Path folder;
  private TinyCourse course;
  private Path home;
  private FakeCoder fake;

  @BeforeEach
  void make() throws Exception {
    course = TinyCourse.in(folder.resolve("brush"));
    home = folder.resolve("desk");
    TestDesk.make(home);
    fake = FakeCoder.in(folder.resolve("bin"));
    FakeCoder.film("too-large.mp4", course.folder().resolve("02 Far water/far.mp4"));
  }

  private CommandRun pack(String... more) {
    List<String> args =
        new ArrayList<>(
            List.of("pack", "--home", home.toString(), course.folder().toString(), "--out"));
    args.add(folder.resolve("editions").toString());
    args.addAll(List.of(more));
    return CommandRun.of(args.toArray(String[]::new));
  }

  private CommandRun light(String... more) {
    List<String> args = new ArrayList<>(List.of("--light", "--ffmpeg", fake.program().toString()));
    args.addAll(List.of(more));
    return pack(args.toArray(String[]::new));
  }

  private static EditionFolder opened(String edition) throws Exception {
    return EditionFolder.open(Path.of(edition), TrustedRoots.firstMeeting());
  }

  private static Set<String> parts(EditionFolder edition, Rendition rendition) {
    return edition.frontPage().facts().parts().stream()
        .filter(part -> part.rendition() == rendition)
        .map(part -> part.address().hex())
        .collect(Collectors.toSet());
  }

  /** Sealed parts by name; names are addresses, so equal names are equal bytes once checked. */
  private static Map<String, Long> sealed(Path edition) throws IOException {
    Map<String, Long> sealed = new TreeMap<>();
    try (Stream<Path> all = Files.walk(edition)) {
      for (Path file : all.filter(f -> f.getFileName().toString().length() == 64).toList()) {
        sealed.put(file.getFileName().toString(), Files.size(file));
      }
    }
    return sealed;
  }

  /** Those that lessons name: the search part is made anew for each edition. */
  private static Map<String, Long> lessons(Path edition) throws IOException {
    Map<String, Long> named = sealed(edition);
    named.keySet().removeAll(sealed(edition.resolve("000")).keySet());
    return named;
  }

  @Test
  void aLightCopyIsPackedBesideItsFilm() throws Exception {
    CommandRun run = light();
    assertThat(run.exitCode()).as(run.err()).isZero();
    EditionFolder edition = opened(run.value("folder"));
    assertThat(parts(edition, Rendition.FULL)).hasSize(1);
    assertThat(parts(edition, Rendition.LIGHT)).hasSize(1);
    assertThat(EditionCheck.everyByte(edition, Progress.NONE).isWhole()).isTrue();
    assertThat(run.err()).contains("1 film is larger than a light copy; 1 copy is to be made");
  }

  @Test
  void withoutTheOptionNoEncoderIsStarted() throws Exception {
    CommandRun run = pack("--ffmpeg", fake.program().toString());
    assertThat(run.exitCode()).isZero();
    assertThat(fake.calls()).isEmpty();
    assertThat(parts(opened(run.value("folder")), Rendition.COMMON)).isNotEmpty();
    assertThat(parts(opened(run.value("folder")), Rendition.LIGHT)).isEmpty();
  }

  @Test
  void theNextEditionKeepsLightPartsByteForByte() throws Exception {
    CommandRun first = light();
    course.write("03 Kelp/notes.md", "# Kelp\n\nOther words.\n");
    CommandRun second = light();
    assertThat(second.out()).contains("number 2", "changed: 03 Kelp/notes.md");
    assertThat(fake.calls()).hasSize(1);
    EditionFolder edition = opened(second.value("folder"));
    assertThat(parts(edition, Rendition.LIGHT))
        .isEqualTo(parts(opened(first.value("folder")), Rendition.LIGHT));
    assertThat(parts(edition, Rendition.FULL))
        .isEqualTo(parts(opened(first.value("folder")), Rendition.FULL));
    assertThat(EditionCheck.everyByte(edition, Progress.NONE).isWhole()).isTrue();
    assertThat(light().out()).contains("nothing is new since edition 2");
  }

  @Test
  void lightCopiesAddedLaterLeaveTheLargeFilmAsItWas() throws Exception {
    CommandRun first = pack();
    CommandRun second = light();
    assertThat(second.out()).contains("new: 02 Far water/far.light.mp4");
    assertThat(sealed(Path.of(second.value("folder"))))
        .containsAllEntriesOf(lessons(Path.of(first.value("folder"))));
    CommandRun third = pack();
    assertThat(third.err()).contains("pack with --light to keep them");
    assertThat(third.out()).contains("removed: far.light.mp4");
  }

  @Test
  void aFolderOfTheLightFilmsIsCompleteAndLacksTheLargeOnes() throws Exception {
    CommandRun run = light("--light-only", folder.resolve("mail").toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.value("light")).isEqualTo(folder.resolve("mail/brush-1-light").toString());
    EditionFolder split = opened(run.value("light"));
    EditionCheck report = EditionCheck.everyByte(split, Progress.NONE);
    assertThat(report.folders()).allMatch(lesson -> lesson.state() == PartState.HERE);
    for (PartEntry part : split.frontPage().facts().parts()) {
      assertThat(split.locate(part).isPresent()).isEqualTo(part.rendition() != Rendition.FULL);
    }
    CommandRun again = light("--light-only", folder.resolve("mail").toString());
    assertThat(again.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(again.err()).contains("Something lies at");
  }

  @Test
  void aCourseOfSmallFilmsHasNoLightFolderToSplitOff() throws Exception {
    Files.delete(course.folder().resolve("02 Far water/far.mp4"));
    CommandRun run = light("--light-only", folder.resolve("mail").toString());
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("nothing to leave out", "send the whole edition");
    assertThat(folder.resolve("mail")).isEmptyDirectory();
  }

  @Test
  void aFailureOfTheEncoderPacksNothing() throws Exception {
    fake.does("echo 'moov atom not found' >&2; exit 1");
    CommandRun run = light();
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("error: The light copy of 02 Far water/far.mp4", "moov atom");
    assertThat(folder.resolve("editions")).doesNotExist();
  }

  @Test
  void anEncoderThatIsNoneIsNamed() {
    CommandRun run = pack("--light", "--ffmpeg", folder.resolve("none").toString());
    assertThat(run.exitCode()).isEqualTo(ExitCode.REFUSED);
    assertThat(run.err()).contains("is no program that can be run", "correct --ffmpeg");
  }

  @Test
  void theLightFilmsOfADeskAreCountedAndRemovedWhenAsked() {
    light();
    CommandRun shown = CommandRun.of("light-films", "--home", home.toString());
    assertThat(shown.out()).startsWith("light films: 1, 15 kB, in ").doesNotContain("removed");
    assertThat(CommandRun.of("light-films", "--home", home.toString(), "--remove").out())
        .contains("removed 1");
    assertThat(CommandRun.of("light-films", "--home", home.toString()).out())
        .startsWith("light films: 0");
  }

  /** Runs only where ffmpeg is installed; elsewhere the test is skipped and says so. */
  @Test
  void theRealEncoderMakesWhatTheRecipeSays() throws Exception {
    Optional<Path> real = FilmCoder.onPath(Optional.ofNullable(System.getenv("PATH")).orElse(""));
    assumeTrue(real.isPresent(), "skipped: ffmpeg is not installed here");
    FakeCoder.film("sixty-frames.mp4", course.folder().resolve("01 Looking/look.mp4"));
    CommandRun run = pack("--light");
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(parts(opened(run.value("folder")), Rendition.LIGHT)).hasSize(2);
    List<MediaInfo> made = new ArrayList<>();
    try (Stream<Path> films = Files.list(home.resolve("packing/light-films"))) {
      for (Path film : films.toList()) {
        try (FileSource source = FileSource.open(film)) {
          made.add(MediaProbe.probe(source));
        }
      }
    }
    assertThat(made)
        .extracting(film -> film.picture().orElseThrow())
        .extracting(
            p ->
                p.format().width()
                    + "x"
                    + p.format().height()
                    + " "
                    + Math.round(p.framesPerSecond()))
        .containsExactlyInAnyOrder("1280x720 5", "160x120 30");
    assertThat(made).allMatch(film -> film.picture().orElseThrow().codec().startsWith("avc1.6400"));
  }
}
