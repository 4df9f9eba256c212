package org.lehrcase.desk.sticks;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.id.Octets;

class StickNamesTest {
  @ParameterizedTest
  @CsvSource({
    "Glasmalerei für Anfänger,Glasmalerei für Anfänger",
    "Was? Wie: 1/2,Was_ Wie_ 1_2",
    "con,_con",
    "LPT1.course,_LPT1.course",
    "ends with dots...,ends with dots",
    "'  spaces  ',spaces",
    "'...',_",
    "\u0041\u0308pfel,\u00c4pfel"
  })
  void anyWordsBecomeANameThatAStickCanHold(String words, String name) throws Exception {
    assertThat(StickNames.safe(words)).isEqualTo(name);
    StickNames.check(List.of(file(name + "/x")));
  }

  @Test
  void aTitleOf200CharactersIsCutAndNeverInsideALetter() throws Exception {
    assertThat(StickNames.safe("ä".repeat(200))).hasSize(StickNames.SAFE_CHARS);
    String fishes = StickNames.safe("x" + "\ud83d\udc20".repeat(100));
    assertThat(fishes).hasSize(StickNames.SAFE_CHARS - 1).endsWith("\ud83d\udc20");
    StickNames.check(List.of(file(fishes)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a/b:c",
        "a/nul",
        "AUX.txt",
        "a./b",
        "a /b",
        "a//b",
        "tab\tbed",
        "q?",
        "back\\slash"
      })
  void namesThatSomeSystemCannotReadAreRefused(String place) {
    refused(place);
  }

  @Test
  void lengthsAreCountedWithTheEndingOfAnUnfinishedFile() {
    assertThatCode(() -> StickNames.check(List.of(file("n".repeat(250)))))
        .doesNotThrowAnyException();
    refused("n".repeat(251));
  }

  @Test
  void twoNamesThatAreOneToAStickAreRefused() {
    refused("brush/Notes.txt", "brush/notes.txt");
    refused("Brush/a", "brush/b");
    refused("\u00c4pfel", "a\u0308pfel");
    refused("same", "same");
  }

  @Test
  void aFileOfFourGigabytesIsRefused() {
    StickFile huge = new StickFile("huge", () -> null, 1L << 32, Octets.of(new byte[32]));
    assertThatThrownBy(() -> StickNames.check(List.of(huge))).hasMessageContaining("FAT32");
  }

  private static void refused(String... places) {
    List<StickFile> files = Arrays.stream(places).map(StickNamesTest::file).toList();
    assertThatThrownBy(() -> StickNames.check(files))
        .isInstanceOf(StickException.class)
        .hasMessageContaining("Nothing was written");
  }

  private static StickFile file(String place) {
    return StickFile.text(place, "x");
  }
}
