package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CourseCheckTest {
  private static final String LESSON = "01 Looking into water/";

  @TempDir private Path folder;

  private static void assertOne(List<Finding> findings, String file, String what) {
    assertThat(findings).hasSize(1);
    assertThat(findings.get(0).file()).isEqualTo(file);
    assertThat(findings.get(0).what()).contains(what);
    assertThat(findings.get(0).whatToDo()).isNotBlank();
  }

  @Test
  void aSoundCourseHasNoFindingsAndCanBePacked() throws Exception {
    var report = CourseOnDisk.sound(folder).check();

    assertThat(report.findings()).isEmpty();
    assertThat(report.packable()).isTrue();
    assertThat(report.volume().filmMillis()).isEqualTo(2000);
    assertThat(report.volume().bytes()).isGreaterThan(15_000);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "hevc-ten-bit.mp4,     HEVC",
    "avc-four-two-two.mp4, 4:2:2",
    "avc-ten-bit.mp4,      10-bit",
    "sound-ac3.mp4,        AC-3",
    "wrong-box.mkv,        Matroska",
    "vp9-opus.webm,        its name says otherwise",
  })
  void filmsThatBrowsersDoNotPlayCannotBePacked(String film, String reason) throws Exception {
    var course = CourseOnDisk.sound(folder).sample(LESSON + "film.mp4", film);

    assertThat(course.check().packable()).isFalse();
    assertOne(course.findings(Severity.ERROR), LESSON + "film.mp4", reason);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "sixty-frames.mp4, 60 frames a second",
    "too-large.mp4,    2560 × 1440 pixels",
  })
  void heavyFilmsAreDoubtedWithTheSizeOfTheCourse(String film, String reason) throws Exception {
    var course = new CourseOnDisk(folder).sample("01 A/film.mp4", film);

    assertOne(course.findings(Severity.DOUBT), "01 A/film.mp4", reason);
    assertThat(course.findings(Severity.DOUBT).get(0).what()).contains("a stick of 8 GB");
    assertThat(course.check().packable()).isTrue();
  }

  @Test
  void anIndexAtTheEndIsOnlyNotedAsPackingMovesIt() throws Exception {
    var course = CourseOnDisk.sound(folder).sample(LESSON + "film.mp4", "index-at-end.mp4");

    assertOne(course.findings(Severity.NOTE), LESSON + "film.mp4", "index at the end");
    assertThat(course.check().packable()).isTrue();
  }

  @Test
  void aFragmentedFilmIsDoubted() throws Exception {
    var course = CourseOnDisk.sound(folder).sample(LESSON + "film.mp4", "in-fragments.mp4");

    assertOne(course.findings(Severity.DOUBT), LESSON + "film.mp4", "fragments");
  }

  @Test
  void aWebmWithItsRightNameCanBePacked() throws Exception {
    var course = new CourseOnDisk(folder).sample("01 A/film.webm", "vp9-opus.webm");

    assertThat(course.check().findings()).isEmpty();
  }

  @Test
  void aFilmThatWasCopiedHalfIsRefused() throws Exception {
    var course = CourseOnDisk.sound(folder);
    var film = course.root().resolve(LESSON + "film.mp4");
    var size = (int) Files.size(film);
    try (var in = Files.newInputStream(film)) {
      course.bytes(LESSON + "film.mp4", Arrays.copyOf(in.readNBytes(size), size / 2));
    }

    assertOne(course.findings(Severity.ERROR), LESSON + "film.mp4", "copy is incomplete");
  }

  @Test
  void aFilmInAFormNobodyPlaysIsRefusedByItsName() throws Exception {
    var course = CourseOnDisk.sound(folder).text(LESSON + "old.avi", "x");

    assertOne(course.findings(Severity.ERROR), LESSON + "old.avi", "browsers do not play");
  }

  @Test
  void captionsThatDoNotParseAreRefused() throws Exception {
    var course = CourseOnDisk.sound(folder).text(LESSON + "film.en.vtt", "no captions at all");

    assertThat(course.findings(Severity.ERROR))
        .isNotEmpty()
        .allMatch(f -> f.file().equals(LESSON + "film.en.vtt"));
  }

  @Test
  void captionsPastTheEndOfTheFilmAreDoubted() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(LESSON + "film.en.vtt", "WEBVTT\n\n00:09.000 --> 00:10.000\nLate.\n");

    assertOne(course.findings(Severity.DOUBT), LESSON + "film.en.vtt", "past the end");
    assertThat(course.findings(Severity.DOUBT).get(0).place()).isEqualTo("0:09");
  }

  @Test
  void twoCaptionsInOneLanguageAreDoubted() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(LESSON + "other.en.srt", "1\n00:00:00,100 --> 00:00:01,000\nLook.\n");

    assertOne(course.findings(Severity.DOUBT), LESSON + "other.en.srt", "same language");
  }

  @Test
  void captionsWithoutALanguageAreNoted() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(LESSON + "final.vtt", "WEBVTT\n\n00:00.100 --> 00:01.500\nLook.\n");

    assertOne(course.findings(Severity.NOTE), LESSON + "final.vtt", "which language");
  }

  @Test
  void aBrokenPdfIsRefused() throws Exception {
    var course = CourseOnDisk.sound(folder).text(LESSON + "handout.pdf", "%PDF-1.7\nnot really");

    assertOne(course.findings(Severity.ERROR), LESSON + "handout.pdf", "broken PDF");
  }

  @Test
  void rubbishBetweenTheMarksOfAPdfIsRefused() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(LESSON + "handout.pdf", "%PDF-1.7\nstartxref\n99999\n%%EOF\n");

    assertOne(course.findings(Severity.ERROR), LESSON + "handout.pdf", "broken PDF");
  }

  @Test
  void aPdfWithAPasswordIsRefused() throws Exception {
    var course = CourseOnDisk.sound(folder).lockedPdf(LESSON + "handout.pdf", "secret");

    assertOne(course.findings(Severity.ERROR), LESSON + "handout.pdf", "password");
  }

  @Test
  void aPdfWithRestrictionsIsDoubted() throws Exception {
    var course = CourseOnDisk.sound(folder).lockedPdf(LESSON + "extra.pdf", "");

    assertThat(course.findings(Severity.DOUBT)).anyMatch(f -> f.what().contains("restrictions"));
  }

  @Test
  void aPageThatTheHandoutDoesNotHaveIsDoubted() throws Exception {
    var course = CourseOnDisk.sound(folder).pdf(LESSON + "handout.pdf", 1);

    assertOne(course.findings(Severity.DOUBT), LESSON + "handout.pdf", "asks for page 2");
  }

  @Test
  void aChapterAfterTheEndOfTheFilmIsDoubted() throws Exception {
    var course = CourseOnDisk.sound(folder).text(LESSON + "film.chapters.txt", "5:00 too late");

    assertOne(course.findings(Severity.DOUBT), "01 Looking into water", "the film ends at 0:02");
  }

  @Test
  void aChapterThatAsksForAFileThatIsNotThereIsDoubted() throws Exception {
    var course =
        CourseOnDisk.sound(folder).text(LESSON + "film.chapters.txt", "0:01 wash [template 9]");

    assertOne(course.findings(Severity.DOUBT), LESSON + "film.chapters.txt", "[template 9]");
    assertThat(course.findings(Severity.DOUBT).get(0).place()).isEqualTo("line 1");
  }

  @Test
  void anImpossibleRowOfAScheduleIsRefusedWithItsLine() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(
                LESSON + "strips.firing.csv",
                "step,rate_c_per_h,target_c,hold_min,note\nup,200,580,10,\nup,-5,5800,10,\n");

    var errors = course.findings(Severity.ERROR);
    assertThat(errors).isNotEmpty().allMatch(f -> f.place().equals("line 3"));
    assertThat(errors).allMatch(f -> f.file().equals(LESSON + "strips.firing.csv"));
  }

  @Test
  void aDoubtfulRowOfAMaterialsListDoesNotStopPacking() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(LESSON + "all.materials.csv", "item,amount,unit,per\nsheet,many,,once\n");

    assertOne(course.findings(Severity.DOUBT), LESSON + "all.materials.csv", "not a number");
    assertThat(course.check().packable()).isTrue();
  }

  @Test
  void aTemplateWithoutATrueSizeIsDoubted() throws Exception {
    var course =
        CourseOnDisk.sound(folder).text(LESSON + "sheet 3.template.svg", CourseOnDisk.svg("800px"));

    assertOne(course.findings(Severity.DOUBT), LESSON + "sheet 3.template.svg", "true size");
  }

  @Test
  void aTemplateWithAScriptIsDoubted() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(
                LESSON + "sheet 3.template.svg",
                CourseOnDisk.svg("180mm").replace("/>", "><script>x</script></svg>"));

    assertOne(course.findings(Severity.DOUBT), LESSON + "sheet 3.template.svg", "scripts");
  }

  @Test
  void aDrawingThatPullsInOtherFilesIsNotFollowed() throws Exception {
    var secret = Files.write(folder.resolve("secret"), new byte[] {'s'});
    var course =
        CourseOnDisk.sound(folder)
            .text(
                LESSON + "sheet 3.template.svg",
                "<!DOCTYPE svg [<!ENTITY x SYSTEM \""
                    + secret.toUri()
                    + "\">]>"
                    + "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"1mm\" height=\"1mm\">&x;"
                    + "</svg>");

    assertThat(course.check().findings())
        .allMatch(f -> f.file().equals(LESSON + "sheet 3.template.svg"));
  }

  @Test
  void aPictureThatIsNoneIsRefused() throws Exception {
    var course = CourseOnDisk.sound(folder).text(LESSON + "photo.png", "no picture");

    assertOne(course.findings(Severity.ERROR), LESSON + "photo.png", "not a picture");
  }

  @Test
  void aMissingLessonNumberIsDoubtedAndADoubleOneRefused() throws Exception {
    var course =
        CourseOnDisk.sound(folder).text("03 Third/a.md", "x").text("03 Third again/a.md", "x");

    assertOne(course.findings(Severity.DOUBT), "", "lesson 2 is missing");
    assertOne(course.findings(Severity.ERROR), "03 Third again", "same lesson number");
  }

  @Test
  void anEmptyLessonIsRefused() throws Exception {
    var course = CourseOnDisk.sound(folder);
    Files.createDirectories(course.root().resolve("02 Nothing"));

    assertOne(course.findings(Severity.ERROR), "02 Nothing", "empty");
  }

  @Test
  void aFolderWithoutLessonsIsRefused() throws Exception {
    assertOne(new CourseOnDisk(folder).findings(Severity.ERROR), "", "no lesson");
  }

  @Test
  void linksThatLeadOutAreRefusedAndNotFollowed() throws Exception {
    var outside = Files.write(folder.resolve("secret.pdf"), new byte[] {'s'});
    var course =
        CourseOnDisk.sound(folder)
            .link(LESSON + "a.pdf", outside)
            .link(LESSON + "b.pdf", Path.of("nowhere.pdf"))
            .link(LESSON + "loop.pdf", Path.of("loop.pdf"))
            .link("02 Away", folder);

    var errors = course.findings(Severity.ERROR);

    assertThat(errors)
        .extracting(Finding::file)
        .containsExactlyInAnyOrder(
            LESSON + "a.pdf", LESSON + "b.pdf", LESSON + "loop.pdf", "02 Away");
    assertThat(course.read().lessons().get(0).assets()).hasSize(8);
  }

  @Test
  void aLinkInsideTheCourseIsReadWhereItLeads() throws Exception {
    var course = CourseOnDisk.sound(folder).link(LESSON + "second.pdf", Path.of("handout.pdf"));

    assertThat(course.check().findings()).isEmpty();
  }

  @Test
  void oddNamesAreDoubted() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(LESSON + "what?.md", "x")
            .text(LESSON + "aux.md", "x")
            .text(LESSON + "cafe\u0301.md", "x")
            .text(LESSON + "evil\u202Egnp.md", "x")
            .text(LESSON + "n".repeat(101) + ".md", "x");

    assertThat(course.findings(Severity.DOUBT))
        .extracting(f -> f.what().replaceFirst(":.*", ""))
        .containsExactlyInAnyOrder(
            "the name is a word that Windows keeps for devices",
            "the name has accents in the split form that older Macs write",
            "the name has invisible control or direction characters",
            "the name is longer than 100 characters",
            "the name has a character that sticks and Windows do not allow");
  }

  @Test
  void namesThatDifferOnlyInCapitalsAreRefused() throws Exception {
    var course = CourseOnDisk.sound(folder).pdf(LESSON + "HANDOUT.pdf", 2);

    assertThat(course.findings(Severity.ERROR)).anyMatch(f -> f.what().contains("capitals"));
  }

  @Test
  void whatDoesNotBelongToALessonIsDoubted() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text(LESSON + "notes.docx", "x")
            .text(LESSON + "raw/take 1.md", "x")
            .text("todo.txt", "x");

    assertThat(course.findings(Severity.DOUBT))
        .extracting(Finding::file)
        .containsExactlyInAnyOrder(LESSON + "notes.docx", LESSON + "raw", "todo.txt");
  }

  @Test
  void aFolderWithoutANumberIsRefusedSoThatNoLessonGetsLost() throws Exception {
    var course = CourseOnDisk.sound(folder).text("Bonus/a.md", "x");

    assertOne(course.findings(Severity.ERROR), "Bonus", "without a lesson number");
  }

  @Test
  void yamlThatMeansNothingIsSaidWithItsPlace() throws Exception {
    var course =
        CourseOnDisk.sound(folder)
            .text("course.yaml", "id: NOT AN ID\nopen-lessons: [1, 7, x]\ncolour: red\n");

    assertThat(course.findings(Severity.ERROR))
        .extracting(Finding::what)
        .anyMatch(w -> w.startsWith("'id'"))
        .anyMatch(w -> w.contains("lesson 7"))
        .anyMatch(w -> w.contains("'x'"));
    assertOne(course.findings(Severity.DOUBT), "course.yaml", "'colour'");
  }

  @Test
  void theReportSaysWhatWasFoundWhereAndWhatToDo() throws Exception {
    var text = rendered(CourseOnDisk.sound(folder).text(LESSON + "photo.png", "no picture"));

    assertThat(text)
        .contains("Brush (brush)")
        .contains("1  Looking into water")
        .contains("open without a license")
        .contains("wrong: " + LESSON + "photo.png")
        .contains("-> export it again")
        .contains("a stick of 8 GB")
        .contains("cannot be packed yet: 1 wrong, 0 doubtful");
  }

  @Test
  void namesInTheReportCannotSteerATerminal() throws Exception {
    var text = rendered(CourseOnDisk.sound(folder).text(LESSON + "x\u001b[2Jy.md", "x"));

    assertThat(text).contains("x?[2Jy.md").doesNotContain("\u001b");
  }

  private static String rendered(CourseOnDisk course) throws Exception {
    var out = new StringWriter();
    course.check().render(new PrintWriter(out));
    return out.toString();
  }
}
