package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.OtherMachine;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.bench.fixture.TinyBench;

/** What the page may keep, and what is turned away without a trace. */
class StudyWireTest {
  private static final String EDITION = "e1".repeat(16);
  private static final String LESSON = "a1".repeat(16);

  @TempDir static Path folder;
  private static ServedCourse served;

  @BeforeAll
  static void start() throws Exception {
    served = ServedCourse.of(TinyBench.quick(folder.resolve("home"), OtherMachine.named("mine")));
  }

  @AfterAll
  static void stop() throws Exception {
    served.close();
  }

  private static RawClient.Answer put(String name, String body) throws Exception {
    return served.page.send("PUT", "api/" + name, body);
  }

  private static JsonObject settings() throws Exception {
    return ServedCourse.json(served.page.get("api/settings"));
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "-1",
        "-0.001",
        "1e999",
        "\"NaN\"",
        "\"Infinity\"",
        "\"\"",
        "\"ten\"",
        "true",
        "null",
        "[1]",
        "{}"
      })
  void aPositionThatIsNoTimeIsRefused(String seconds) throws Exception {
    String body =
        "{\"edition\":\""
            + EDITION
            + "\",\"lesson\":\""
            + LESSON
            + "\",\"seconds\":"
            + seconds
            + "}";
    assertThat(put("position", body).status()).isEqualTo(400);
    assertThat(served.bench.store().positions().last()).isEmpty();
  }

  @ParameterizedTest(name = "edition {0}, lesson {1}")
  @CsvSource({
    "e1e1, a1a1a1a1a1a1a1a1a1a1a1a1a1a1a1a1",
    "e1e1e1e1e1e1e1e1e1e1e1e1e1e1e1e1, A1A1A1A1A1A1A1A1A1A1A1A1A1A1A1A1",
    "e1e1e1e1e1e1e1e1e1e1e1e1e1e1e1e1e1, a1a1a1a1a1a1a1a1a1a1a1a1a1a1a1a1",
    "../../../../etc/passwd, a1a1a1a1a1a1a1a1a1a1a1a1a1a1a1a1",
    "'', a1a1a1a1a1a1a1a1a1a1a1a1a1a1a1a1",
    "e1e1e1e1e1e1e1e1e1e1e1e1e1e1e1e1, ' or 1=1 --'"
  })
  void aPositionInNoLessonIsRefused(String edition, String lesson) throws Exception {
    String body = "{\"edition\":\"" + edition + "\",\"lesson\":\"" + lesson + "\",\"seconds\":1}";
    RawClient.Answer answer = put("position", body);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.text()).contains("\"code\":\"bad-request\"");
    assertThat(served.bench.store().positions().last()).isEmpty();
  }

  @Test
  void aPositionWithoutALessonIsRefused() throws Exception {
    assertThat(put("position", "{\"edition\":\"" + EDITION + "\",\"seconds\":1}").text())
        .contains("lacks \\\"lesson\\\"");
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {
        "{\"a b\":1}",
        "{\"\":1}",
        "{\"constructor.prototype\":1}",
        "{\"__proto__\":1}",
        "{\"speed1\":1}",
        "{\"sp\u00e9ed\":1}",
        "{\"speed\":[1]}",
        "{\"speed\":{}}",
        "{\"speed\":null}",
        "{\"theme\":\"dark\",\"speed\":null}"
      })
  void aSettingOfAnotherShapeIsRefusedAndNoneBesideItIsKept(String body) throws Exception {
    assertThat(put("settings", body).status()).isEqualTo(400);
    assertThat(settings().entrySet()).noneMatch(kept -> kept.getKey().equals("theme"));
  }

  @Test
  void aValueOfTwoHundredSignsIsKeptAndALongerOneIsNot() throws Exception {
    String longest = "x".repeat(200);
    assertThat(put("settings", "{\"memo\":\"" + longest + "\"}").status()).isEqualTo(200);
    assertThat(put("settings", "{\"memo\":\"" + longest + "y\"}").status()).isEqualTo(400);
    assertThat(settings().get("memo").getAsString()).isEqualTo(longest);
    assertThat(put("settings", "{\"" + "n".repeat(41) + "\":1}").status()).isEqualTo(400);
  }

  @ParameterizedTest(name = "{0} comes back as {1}")
  @CsvSource(
      quoteCharacter = '`',
      value = {
        "0.75, 0.75",
        "true, true",
        "\"true\", true",
        "\"F\", \"F\"",
        "\"1e3\", \"1e3\"",
        "\"007\", 7.0",
        "\"-2.5\", -2.5",
        "\"</script>\", \"</script>\"",
        "\"12345678901234567890\", \"12345678901234567890\""
      })
  void aValueComesBackAsWhatItReadsLike(String value, String back) throws Exception {
    assertThat(put("settings", "{\"one\":" + value + "}").status()).isEqualTo(200);
    assertThat(settings().get("one").toString()).isEqualTo(back);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "api/lesson",
        "api/lesson?e=" + "e1",
        "api/lesson?e=&l=",
        "api/lesson?e=zz&l=zz",
        "api/markdown?e=..%2f..&a=x"
      })
  void aQuestionWithoutIdsIsRefused(String question) throws Exception {
    assertThat(served.page.get(question).status()).isEqualTo(400);
  }

  @Test
  void aLessonThatNobodyKnowsIsNotFoundInWords() throws Exception {
    RawClient.Answer answer = served.page.get("api/lesson?e=" + EDITION + "&l=" + LESSON);
    assertThat(answer.status()).isEqualTo(404);
    assertThat(answer.text()).contains("Bring it in from its stick.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"relative/path", "", "..", "\\u0000", "/no/such/folder"})
  void onlyAnAbsoluteFolderIsBroughtIn(String path) throws Exception {
    RawClient.Answer answer =
        served.page.send("POST", "api/bring-in", "{\"path\":\"" + path + "\"}");
    assertThat(answer.status()).isEqualTo(404);
    assertThat(served.bench.courses().known()).isEmpty();
  }
}
