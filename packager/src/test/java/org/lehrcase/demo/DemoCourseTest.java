package org.lehrcase.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.course.Captions;
import org.lehrcase.core.course.MaterialsList;
import org.lehrcase.core.glass.FiringSchedule;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.desk.author.CourseCheck;
import org.lehrcase.desk.author.CourseReport;
import org.lehrcase.desk.author.Severity;

/** The committed demonstration course is whole, small and says what it should. */
class DemoCourseTest {
  private static final Path DEMO = Path.of("demo");
  private static final String KELP = "brush/03 Kelp, fish and coral/Kelp, fish and coral.pdf";

  @Test
  void wholeDemoIsSmallerThanTwentyMegabytes() throws IOException {
    long sum = 0;
    for (Path file : files("")) {
      sum += Files.size(file);
    }
    assertThat(sum).isBetween(5_000_000L, 20_000_000L);
  }

  @ParameterizedTest
  @ValueSource(strings = {"brush", "kiln"})
  void deskFindsNothingWrongWithASeries(String series) throws IOException {
    CourseReport report = CourseCheck.run(DEMO.resolve(series));
    assertThat(report.packable()).isTrue();
    assertThat(report.findings()).noneMatch(f -> f.severity() == Severity.ERROR);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "A1|brush/01 Looking into water/Looking into water.pdf|6",
        "A2|brush/02 Far water/Far water.pdf|8",
        "A3|brush/03 Kelp, fish and coral/Kelp, fish and coral.pdf|10",
        "B1|kiln/01 Six sheets, one bed/Six sheets, one bed.pdf|8",
        "B2|kiln/02 The long cool/The long cool.pdf|8"
      })
  void handoutHasItsPagesAndItsMarkerInClear(String id, String file, int pages) throws IOException {
    try (PDDocument document = Loader.loadPDF(DEMO.resolve(file).toFile())) {
      assertThat(document.getNumberOfPages()).isEqualTo(pages);
    }
    assertThat(latin1(DEMO.resolve(file))).contains("REEF-GARDEN-MARKER-" + id);
  }

  @Test
  void firstEditionSaysEighteenMinutesAndTheSecondEight() throws IOException {
    assertThat(page(DEMO.resolve(KELP), 9)).contains("for 18 minutes");
    assertThat(page(DEMO.resolve("second-edition").resolve(KELP), 9)).contains("for 8 minutes");
    assertThat(page(DEMO.resolve(KELP), 9)).contains("vent open until here");
    assertThat(files("second-edition")).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({"F1,4,3,5", "F2,4,4,6", "F3,5,5,7", "F4,3,5,8", "F5,9,39,41"})
  void firingLastsAsTheHandoutSays(String name, int steps, double atLeast, double atMost)
      throws IOException {
    Path file =
        files("").stream()
            .filter(f -> f.getFileName().toString().startsWith(name + " "))
            .findFirst()
            .orElseThrow();
    FiringSchedule schedule = FiringSchedule.parse(utf8(file));
    assertThat(schedule.problems()).isEmpty();
    assertThat(schedule.segments()).hasSize(steps);
    assertThat(schedule.controllerHours(20, KilnPace.ASSUMED)).isBetween(atLeast, atMost);
  }

  @Test
  void everyTableAndCaptionFileParsesWithoutAComplaint() throws IOException {
    for (Path file : files("")) {
      if (file.toString().endsWith(".materials.csv")) {
        MaterialsList list = MaterialsList.parse(utf8(file));
        assertThat(list.problems()).as(file.toString()).isEmpty();
        assertThat(list.rows()).as(file.toString()).hasSizeGreaterThan(4);
      } else if (file.toString().endsWith(".vtt")) {
        Captions captions = Captions.parse(utf8(file));
        assertThat(captions.problems()).as(file.toString()).isEmpty();
        assertThat(captions.cues()).as(file.toString()).hasSizeGreaterThan(8);
      }
    }
  }

  @Test
  void everyTemplateIsInMillimetresWithARulerOfHundred() throws IOException {
    List<Path> templates =
        files("").stream().filter(f -> f.toString().endsWith(".template.svg")).toList();
    assertThat(templates).hasSize(9);
    for (Path template : templates) {
      assertThat(utf8(template))
          .contains("width=\"297mm\" height=\"210mm\" viewBox=\"0 0 297 210\"")
          .contains("M58.50 182L158.50 182");
    }
  }

  @Test
  void onlyOneFilmKeepsItsIndexAtTheEnd() throws IOException {
    for (Path film : files("")) {
      if (film.toString().endsWith(".mp4")) {
        boolean last = film.endsWith("Far water.mp4");
        assertThat(indexIsLast(film)).as(film.toString()).isEqualTo(last);
      }
    }
  }

  @Test
  void secondOfAFrameIsReadBackFromItsSquares() {
    BufferedImage frame =
        new BufferedImage(Stage.WIDTH, Stage.HEIGHT, BufferedImage.TYPE_3BYTE_BGR);
    for (int second : new int[] {0, 1, 37, 255}) {
      SecondMark.draw(frame, second);
      assertThat(SecondMark.read(frame)).isEqualTo(second);
    }
  }

  @Test
  void depthPalesEverySheetMoreThanTheOneBefore() {
    for (int sheet = 2; sheet <= Reef.SHEETS; sheet++) {
      assertThat(Palette.strength(sheet)).isLessThan(Palette.strength(sheet - 1));
    }
  }

  private static boolean indexIsLast(Path film) throws IOException {
    try (InputStream in = Files.newInputStream(film)) {
      long skip = 0;
      while (true) {
        in.skipNBytes(skip);
        ByteBuffer head = ByteBuffer.wrap(in.readNBytes(8));
        long size = Integer.toUnsignedLong(head.getInt());
        String kind = StandardCharsets.ISO_8859_1.decode(head).toString();
        if (kind.equals("moov") || kind.equals("mdat")) {
          return kind.equals("mdat");
        }
        skip = size - 8;
      }
    }
  }

  private static String page(Path pdf, int number) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      PDFTextStripper text = new PDFTextStripper();
      text.setStartPage(number);
      text.setEndPage(number);
      return text.getText(document).toLowerCase(Locale.ROOT);
    }
  }

  private static List<Path> files(String below) throws IOException {
    try (Stream<Path> all = Files.walk(DEMO.resolve(below))) {
      return all.filter(Files::isRegularFile).sorted().toList();
    }
  }

  private static String utf8(Path file) throws IOException {
    return Files.readString(file);
  }

  private static String latin1(Path file) throws IOException {
    return Files.readString(file, StandardCharsets.ISO_8859_1);
  }
}
