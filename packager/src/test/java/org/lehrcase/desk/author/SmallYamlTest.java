package org.lehrcase.desk.author;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SmallYamlTest {
  @Test
  void readsTextsAndLists() {
    var yaml = SmallYaml.parse("title: 'Six: sheets'\nopen: [1, 2]\nlong: |\n  one\n  two\n");

    assertThat(yaml.problems()).isEmpty();
    assertThat(yaml.text("title")).contains("Six: sheets");
    assertThat(yaml.list("open")).containsExactly("1", "2");
    assertThat(yaml.text("long")).contains("one\ntwo");
    assertThat(yaml.keys()).containsExactly("long", "open", "title");
    assertThat(yaml.text("absent")).isEmpty();
    assertThat(yaml.list("absent")).isEmpty();
  }

  @Test
  void numbersAndYesStayTheTextTheyAre() {
    var yaml = SmallYaml.parse("a: 010\nb: yes\nc:\n");

    assertThat(yaml.text("a")).contains("010");
    assertThat(yaml.text("b")).contains("yes");
    assertThat(yaml.text("c")).contains("");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "a: &x 1\nb: *x\n",
        "a: *x\n",
        "a: {b: c}\n",
        "a: [[1]]\n",
        "a: [{b: 1}]\n",
        "[1, 2]\n",
        "just words\n",
        "a: 1\na: 2\n",
        "a: 1\n---\nb: 2\n",
        "? [a]\n: b\n",
        "a: 'open\n",
        "\t: x\n",
      })
  void everythingElseIsAProblem(String text) {
    assertThat(SmallYaml.parse(text).problems()).hasSize(1);
  }

  @Test
  void aProblemNamesItsLine() {
    assertThat(SmallYaml.parse("a: 1\nb: {c: 2}\n").problems().get(0).line()).isEqualTo(2);
  }

  @Test
  void deepNestsAndLongFilesAreRefusedAtOnce() {
    assertTimeoutPreemptively(
        Duration.ofSeconds(10),
        () -> {
          assertThat(SmallYaml.parse("a: " + "[".repeat(60_000)).problems()).hasSize(1);
          assertThat(SmallYaml.parse("{".repeat(60_000)).problems()).hasSize(1);
          assertThat(SmallYaml.parse("a: " + "x".repeat(70_000)).problems()).hasSize(1);
        });
  }

  @Test
  void anEmptyFileSaysNothing() {
    assertThat(SmallYaml.parse("").problems()).isEmpty();
    assertThat(SmallYaml.parse("# only a remark\n").keys()).isEmpty();
  }
}
