package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.course.AssetRole;

class FileNamesTest {
  @ParameterizedTest
  @CsvSource({
    "film.MP4, VIDEO",
    "film.m4v, VIDEO",
    "a.mov, VIDEO",
    "a.webm, VIDEO",
    "a.en.vtt, CAPTIONS",
    "a.srt, CAPTIONS",
    "a.chapters.vtt, CHAPTERS",
    "a.Chapters.txt, CHAPTERS",
    "a.pdf, HANDOUT",
    "a.md, HANDOUT",
    "a.template.pdf, TEMPLATE",
    "a.template.png, TEMPLATE",
    "a.png, IMAGE",
    "a.JPEG, IMAGE",
    "a.fault.md, FAULT_CARD",
    "a.layers.yaml, LAYER_PLAN",
    "a.firing.csv, FIRING_SCHEDULE",
    "a.materials.csv, MATERIALS_LIST",
  })
  void theMostTellingEndingDecides(String name, AssetRole role) {
    assertThat(FileKind.ofName(name).map(FileKind::role)).contains(role);
  }

  @ParameterizedTest
  @ValueSource(strings = {"a.svg", "a.txt", "a.yaml", "a.csv", "a.docx", "mp4"})
  void otherEndingsSayNothing(String name) {
    assertThat(FileKind.ofName(name)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "film.en.vtt, en",
    "film.DE.srt, de",
    "film.pt-br.vtt, pt-BR",
    "film.fil.vtt, fil",
    "film.vtt, ''",
    "film.final.vtt, ''",
    "film.qqz.vtt, ''",
  })
  void theLanguageOfCaptionsIsATagThatExists(String name, String language) {
    assertThat(FileKind.captionLanguage(name)).isEqualTo(language);
  }

  @ParameterizedTest
  @CsvSource({
    "01 First wash, 1",
    "1, 1",
    "007_x, 7",
    "12-x, 12",
    "3. x, 3",
  })
  void aLessonFolderStartsWithItsNumber(String name, int number) {
    assertThat(LessonFolder.number(name)).isEqualTo(Optional.of(number));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0 x", "00", "Bonus", "1234 x", "3D prints", "-1 x"})
  void otherFoldersAreNoLessons(String name) {
    assertThat(LessonFolder.number(name)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"a/b", "a:b", "con", "COM1.txt", "x.", " x", "x\u0007", "x\u200b"})
  void oddNamesAreNamed(String name) {
    assertThat(FileNames.oddities(name)).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"café.pdf", "console.md", "sheet 4 (old).svg", "水.pdf"})
  void ordinaryNamesAreNotOdd(String name) {
    assertThat(FileNames.oddities(name)).isEmpty();
  }

  @Test
  void shownNamesFitTheContents() {
    assertThat(FileNames.shown("cafe\u0301\u202E.md")).isEqualTo("café .md");
    assertThat(FileNames.shown("\u0007")).isEqualTo("unnamed");
  }

  @Test
  void namesAreOrderedTheWayPeopleCount() {
    var names =
        new java.util.ArrayList<>(List.of("b", "a10", "A9", "a 1", "a99999999999999999999"));
    names.sort(NumbersInNames.ORDER);
    assertThat(names).containsExactly("A9", "a10", "a99999999999999999999", "a 1", "b");
  }

  @ParameterizedTest
  @CsvSource({
    "0, 8",
    "6900000000, 8",
    "7000000000, 16",
    "29000000000, 32",
    "59000000000, 64",
  })
  void aStickHasRoomForTheProgramToo(long bytes, int gigabytes) {
    assertThat(StickSize.gigabytes(bytes)).hasValue(gigabytes);
  }

  @Test
  void aCourseBeyondEveryStickNeedsMoreThanOne() {
    assertThat(StickSize.words(3_000_000_000_000L)).isEqualTo("more than one stick");
  }

  @Test
  void amountsAreWrittenForPeople() {
    assertThat(Amounts.bytes(999)).isEqualTo("999 bytes");
    assertThat(Amounts.bytes(15_273)).isEqualTo("15 kB");
    assertThat(Amounts.bytes(4_260_000_000L)).isEqualTo("4.3 GB");
    assertThat(Amounts.time(62_900)).isEqualTo("1:02");
    assertThat(Amounts.time(3_723_000)).isEqualTo("1:02:03");
    assertThat(Amounts.bitRate(12_340_000)).isEqualTo("12.3 Mbit/s");
  }
}
