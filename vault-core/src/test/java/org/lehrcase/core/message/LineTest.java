package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.CourseText;

/** One rule for names, the same on every machine. */
class LineTest {
  private static final int LAST = Character.MAX_CODE_POINT;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Ada Example",
        "Łódź",
        "ガラス",
        "שלום",
        "نقش",
        "a – b",
        "🔥 kiln",
        "x\u0378y",
        "\uE000"
      })
  void namesOfAllScriptsStandAlsoWithCharactersThatAreNewToThisMachine(String name)
      throws VaultException {
    assertThat(Line.require(name, Line.NAME_CHARS)).isEqualTo(name);
  }

  @Test
  void theListIsTheOneOfTheDocument() throws Exception {
    String document;
    try (var in = Files.newInputStream(Path.of("..", "docs", "format.md"))) {
      document = new String(in.readNBytes(1 << 20), StandardCharsets.UTF_8);
    }
    String squeezed = document.replaceAll("\\s+", " ");
    String written = String.join(", ", ranges()).replaceFirst("0–1F", "U+0000–1F");
    assertThat(squeezed).contains("holds none of " + written + ":");
  }

  /** The forbidden ranges as the document writes them, found by asking for every character. */
  private static List<String> ranges() {
    List<String> ranges = new ArrayList<>();
    int first = -1;
    for (int c = 0; c <= LAST + 1; c++) {
      boolean forbidden = c <= LAST && !Line.mayHold(c);
      if (forbidden && first < 0) {
        first = c;
      } else if (!forbidden && first >= 0) {
        String end = c - 1 == first ? "" : "–" + hex(c - 1);
        ranges.add(hex(first) + end);
        first = -1;
      }
    }
    return ranges;
  }

  private static String hex(int codePoint) {
    return Integer.toHexString(codePoint).toUpperCase(Locale.ROOT);
  }

  @Test
  void everyControlBreakAndTurnOfDirectionThatThisMachineKnowsIsOnTheList() {
    IntStream.rangeClosed(0, LAST)
        .filter(LineTest::turnsOrBreaks)
        .forEach(c -> assertThat(Line.mayHold(c)).as(hex(c)).isFalse());
  }

  private static boolean turnsOrBreaks(int codePoint) {
    int type = Character.getType(codePoint);
    int direction = Character.getDirectionality(codePoint);
    return type == Character.CONTROL
        || type == Character.SURROGATE
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR
        || direction >= Character.DIRECTIONALITY_LEFT_TO_RIGHT_EMBEDDING
            && direction <= Character.DIRECTIONALITY_POP_DIRECTIONAL_FORMAT
        || direction >= Character.DIRECTIONALITY_LEFT_TO_RIGHT_ISOLATE;
  }

  @Test
  void lettersDigitsAndSignsAreNeverOnTheList() {
    IntStream.rangeClosed(0, LAST)
        .filter(c -> Character.isLetterOrDigit(c) || Character.getType(c) == Character.MATH_SYMBOL)
        .forEach(c -> assertThat(Line.mayHold(c)).as(hex(c)).isTrue());
  }

  @Test
  void namesOfLicensesAndNamesOfCoursesKeepOneRule() {
    for (int c = 1; c <= LAST; c += c < 0x3000 || c > 0xd7f0 && c < 0xffff ? 1 : 251) {
      String name = "a" + Character.toString(c) + "b";
      boolean clean = Line.isClean(name);
      if (clean) {
        assertThatCode(() -> CourseText.name(name)).as(hex(c)).doesNotThrowAnyException();
      } else {
        assertThatThrownBy(() -> CourseText.name(name))
            .as(hex(c))
            .isInstanceOf(IllegalArgumentException.class);
      }
    }
  }

  @Test
  void tidyingGivesANameForEveryCharacter() {
    for (int c = 1; c <= LAST; c += c < 0x3000 ? 1 : 97) {
      String tidied = CourseText.tidied("a" + Character.toString(c) + "b");
      assertThat(Line.isClean(tidied)).as(hex(c)).isTrue();
    }
  }

  @Test
  void tooLongIsToldApartFromNotAllowed() {
    assertThatThrownBy(() -> Line.require("x".repeat(101), 100))
        .isInstanceOf(VaultException.TooLarge.class)
        .hasMessageContaining("101");
    assertThatThrownBy(() -> Line.require("a\u202eb", 100))
        .isInstanceOf(VaultException.Malformed.class);
    assertThatThrownBy(() -> Line.require("  ", 100)).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aLetterAndItsAccentMustBeOneCharacter() {
    assertThat(Line.isComposed("e\u0301")).isFalse();
    assertThat(Line.isClean("e\u0301")).isFalse();
    assertThat(Line.isClean("\u00e9")).isTrue();
  }

  @Test
  void aLineOfAMessageIsHeldToTheRule() throws VaultException {
    CborReader good = CborReader.of(new CborWriter().text("moss").toBytes());
    assertThat(good.line(4)).isEqualTo("moss");
    CborReader tooLong = CborReader.of(new CborWriter().text("mosses").toBytes());
    assertThatThrownBy(() -> tooLong.line(5)).isInstanceOf(VaultException.TooLarge.class);
    CborReader wide = CborReader.of(new CborWriter().text("ガラス").toBytes());
    assertThat(wide.line(3)).isEqualTo("ガラス");
    CborReader broken = CborReader.of(new CborWriter().text("a\nb").toBytes());
    assertThatThrownBy(() -> broken.line(5)).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void charactersAreReadWithoutTheRuleOfALine() throws VaultException {
    CborReader text = CborReader.of(new CborWriter().text("a\nb").toBytes());
    assertThat(text.characters(3)).isEqualTo("a\nb");
    CborReader wide = CborReader.of(new CborWriter().text("ガラス").toBytes());
    assertThatThrownBy(() -> wide.characters(2)).isInstanceOf(VaultException.TooLarge.class);
  }
}
