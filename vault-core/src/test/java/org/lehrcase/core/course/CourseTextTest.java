package org.lehrcase.core.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CourseTextTest {

  @ParameterizedTest
  @ValueSource(strings = {"Looking into water", "Grün", "ガラス", "a – b", "5 < 6 & \"7\""})
  void ordinaryNamesStand(String name) {
    assertThat(CourseText.name(name)).isEqualTo(name);
  }

  @ParameterizedTest(name = "[{index}]")
  @ValueSource(
      strings = {
        "",
        " ",
        "a\nb",
        "a\rb",
        "a\tb",
        "a\0b",
        "a\u0085b",
        "a\u2028b",
        "a\u2029b",
        "a\u200Eb",
        "a\u202Ab",
        "a\u2069b",
        "a\u061Cb",
        "a\u200Bb",
        "\uFEFFa",
        "a\uD800",
        "e\u0301"
      })
  void disguisesDoNot(String name) {
    assertThatThrownBy(() -> CourseText.name(name)).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aHundredCharactersStandAndOneMoreDoesNot() {
    assertThat(CourseText.name("x".repeat(100))).hasSize(100);
    assertThatThrownBy(() -> CourseText.name("x".repeat(101)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void paragraphsMayBreakLinesAndBeEmpty() {
    assertThat(CourseText.paragraph("a\nb")).isEqualTo("a\nb");
    assertThat(CourseText.paragraph("")).isEmpty();
    assertThatThrownBy(() -> CourseText.paragraph("a\r\nb"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> CourseText.paragraph("x".repeat(CourseText.MAX_PARAGRAPH + 1)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @ParameterizedTest
  @CsvSource({"'  a \t b  ',a b", "'e\u0301',\u00E9", "'a\u202Eb',a b", "'a\nb',a b", "' ',''"})
  void tidyingMakesANameOfWhatWasTyped(String typed, String name) {
    assertThat(CourseText.tidied(typed)).isEqualTo(name);
  }

  @Test
  void tidyingNeverSplitsACharacter() {
    String tidied = CourseText.tidied("x".repeat(99) + "\uD83D\uDD25 more");
    assertThat(tidied).isEqualTo("x".repeat(99));
    assertThat(CourseText.name(tidied)).isEqualTo(tidied);
  }

  @Test
  void everyCodeNamesOneValueAndNoOther() {
    for (AssetRole role : AssetRole.values()) {
      assertThat(AssetRole.ofCode(role.code())).contains(role);
    }
    for (Rendition rendition : Rendition.values()) {
      assertThat(Rendition.ofCode(rendition.code())).contains(rendition);
    }
    for (MomentTarget target : MomentTarget.values()) {
      assertThat(MomentTarget.ofCode(target.code())).contains(target);
    }
    assertThat(AssetRole.ofCode(10)).isEmpty();
    assertThat(Rendition.ofCode(3)).isEmpty();
    assertThat(MomentTarget.ofCode(6)).isEmpty();
  }
}
