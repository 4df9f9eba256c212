package org.lehrcase.desk.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.lehrcase.desk.home.TestDesk;
import org.lehrcase.desk.pack.TinyCourse;

class CheckAndPackTest {
  @TempDir Path folder;
  private TinyCourse course;
  private Path home;

  @BeforeEach
  void make() throws Exception {
    course = TinyCourse.in(folder.resolve("brush"));
    home = folder.resolve("desk");
    TestDesk.make(home);
  }

  @Test
  void theCheckSaysWhetherTheCourseCanBePacked() throws IOException {
    CommandRun good = CommandRun.of("check", course.folder().toString());
    assertThat(good.exitCode()).isEqualTo(ExitCode.DONE);
    assertThat(good.out()).contains("Brush (brush)", "This course can be packed");
    Files.createDirectories(course.folder().resolve("01 Twin"));
    CommandRun bad = CommandRun.of("check", course.folder().toString());
    assertThat(bad.exitCode()).isEqualTo(ExitCode.COURSE_HAS_ERRORS);
    assertThat(bad.out()).contains("01 Twin", "cannot be packed");
    assertThat(CommandRun.of("check", folder.resolve("none").toString()).exitCode())
        .isEqualTo(ExitCode.FILES);
  }

  @Test
  void resultsGoToOutAndMessagesToErr() {
    CommandRun run = pack();
    assertThat(run.exitCode()).as(run.err()).isZero();
    assertThat(run.out().lines())
        .hasSize(4)
        .contains("number 1", "first edition")
        .anyMatch(line -> line.startsWith("folder ") && line.endsWith("brush-1"));
    assertThat(run.err()).contains("Edition 1 needs", "100 % of", "/s");
    assertThat(Path.of(run.value("folder"))).isDirectoryContaining("glob:**lehrcase.front");
  }

  @Test
  void theSecondPackSaysWhatIsNewAndTheThirdThatNothingIs() throws IOException {
    pack();
    course.write("03 Kelp/notes.md", "# Kelp\n\nOther words.\n");
    CommandRun second = pack("--changes-only", folder.resolve("mail").toString());
    assertThat(second.out()).contains("number 2", "changed: 03 Kelp/notes.md");
    assertThat(Path.of(second.value("changes"))).isDirectory();
    CommandRun third = pack();
    assertThat(third.exitCode()).isZero();
    assertThat(third.out()).contains("nothing is new since edition 2");
  }

  @Test
  void aRenamedLessonIsAskedAboutAndCanBeDeclaredNew() throws IOException {
    pack();
    course.rename("03 Kelp", "04 Kelp and coral");
    assertThat(pack().err()).contains("Same lesson, renamed?", "--new-lesson 4");
    course.rename("04 Kelp and coral", "05 Kelp alone");
    assertThat(pack("--new-lesson", "5").out()).contains("new lesson 5: Kelp alone");
  }

  @Test
  void errorsOfTheCourseAreNamedAndNothingIsWritten() throws IOException {
    Files.createDirectories(course.folder().resolve("01 Twin"));
    CommandRun run = pack();
    assertThat(run.exitCode()).isEqualTo(ExitCode.COURSE_HAS_ERRORS);
    assertThat(run.err()).contains("01 Twin", "Nothing was written");
    assertThat(folder.resolve("editions")).doesNotExist();
  }

  @Test
  void aSaleBetweenEditionsIsInTheLicenseFile() {
    pack();
    CommandRun sold =
        CommandRun.of(
            "license",
            "--home",
            home.toString(),
            "--name",
            "Ida",
            "--email",
            "ida@x.example",
            "--series",
            "brush",
            "--out",
            folder.resolve("ida.txt").toString());
    assertThat(sold.exitCode()).as(sold.err()).isZero();
    assertThat(sold.err()).doesNotContain("no edition");
  }

  private CommandRun pack(String... more) {
    List<String> args =
        new ArrayList<>(
            List.of(
                "pack",
                course.folder().toString(),
                "--home",
                home.toString(),
                "--out",
                folder.resolve("editions").toString()));
    args.addAll(List.of(more));
    return CommandRun.of(args.toArray(String[]::new));
  }
}
