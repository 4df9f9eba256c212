package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The conditional fields of RFC 9110, section 13.1, for a file whose tag is "ab12". */
class EntityTagTest {
  private final EntityTag tag = new EntityTag("ab12");

  @ParameterizedTest(name = "{0}: strongly {1}, weakly {2}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "\"ab12\" | true | true",
        "W/\"ab12\" | false | true",
        "w/\"ab12\" | false | false",
        "* | true | true",
        "\"x\", \"ab12\" | true | true",
        "\"x\",W/\"ab12\",\"y\" | false | true",
        "ab12 | false | false",
        "\"AB12\" | false | false",
        "\"ab12 | false | false",
        "\"ab123\" | false | false",
        // section 8.8.3: a comma and an asterisk may stand inside a tag
        "\"a,*,b\" | false | false",
        "\"x\", * | false | false"
      })
  void aListOfTagsIsComparedAsTheStandardSays(String field, boolean strongly, boolean weakly) {
    assertThat(tag.matchesStrongly(List.of(field))).isEqualTo(strongly);
    assertThat(tag.matchesWeakly(List.of(field))).isEqualTo(weakly);
  }

  /** Section 13.1.5: a weak tag or a date that is not ours means: send the whole. */
  @ParameterizedTest(name = "{0}: range {1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "\"ab12\" | true",
        "W/\"ab12\" | false",
        "\"x\" | false",
        "* | false",
        "\"ab12\", \"x\" | false",
        "Wed, 25 Nov 2026 00:00:00 GMT | false"
      })
  void aRangeIsSentOnlyForOurStrongTag(String field, boolean range) {
    assertThat(tag.allowsRange(List.of(field))).isEqualTo(range);
    assertThat(tag.allowsRange(List.of())).isTrue();
    assertThat(tag.allowsRange(List.of(field, field))).isFalse();
  }
}
