package org.lehrcase.desk.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.RawClient;
import org.lehrcase.desk.home.TestDesk;

/** Nobody but the desk's own page gets an answer, at any of its doors. */
class DeskStrangerWireTest {
  /** Every question that the page may ask. */
  private static final String[] DOORS = {
    "GET api/desk",
    "POST api/unlock",
    "POST api/quit",
    "GET api/jobs/j1",
    "POST api/jobs/j1/stop",
    "POST api/laptops",
    "GET api/policy",
    "POST api/policy",
    "GET api/corrections?folder=x",
    "POST api/corrections/preview",
    "POST api/corrections/sign",
    "POST api/corrections/sent",
    "POST api/corrections/take-back",
    "POST api/closing/rehearse",
    "GET api/waiting",
    "POST api/waiting/x/answer",
    "POST api/waiting/x/settle",
    "GET api/people?q=",
    "GET api/person?id=x",
    "POST api/people",
    "POST api/licenses/x/issue",
    "POST api/licenses/x/block",
    "POST api/licenses/x/unblock",
    "POST api/licenses/x/refund",
    "POST api/licenses/x/places",
    "POST api/licenses/x/sent",
    "POST api/people/x/rename",
    "POST api/people/x/erase",
    "POST api/acts/1/undo",
    "POST api/import",
    "POST api/import/x/look",
    "POST api/import/x/enter",
    "GET api/courses",
    "GET api/folders?at=",
    "POST api/courses/check",
    "POST api/courses/pack",
    "POST api/courses/keys",
    "GET api/book?kind=&y=",
    "GET api/year?y=2027",
    "GET api/safe",
    "POST api/backup",
    "POST api/passphrase",
    "GET index.html",
    "GET ui/desk/main.js"
  };

  @TempDir static Path folder;
  private static DeskClient desk;

  @BeforeAll
  static void start() throws Exception {
    TestDesk.make(folder.resolve("desk"));
    desk = DeskClient.unlocked(folder.resolve("desk"));
  }

  @AfterAll
  static void stop() throws Exception {
    desk.close();
  }

  static Stream<String> doors() {
    return Stream.of(DOORS);
  }

  private static String first(String door) {
    String[] both = door.split(" ");
    return both[0] + " " + desk.path + both[1] + " HTTP/1.1";
  }

  private static RawClient.Answer ask(String door, String... more) throws Exception {
    String[] lines = new String[4 + more.length];
    lines[0] = first(door);
    lines[1] = "X-Lehrcase: 1";
    lines[2] = "Content-Type: application/json";
    lines[3] = "Content-Length: 2";
    System.arraycopy(more, 0, lines, 4, more.length);
    return desk.raw.send(lines, new byte[] {'{', '}'});
  }

  private static void refused(RawClient.Answer answer, int status) {
    assertThat(answer.status()).isEqualTo(status);
    assertThat(answer.header("Set-Cookie")).isEmpty();
    assertThat(answer.header("Access-Control-Allow-Origin")).isEmpty();
    assertThat(answer.text()).doesNotContain(desk.path).doesNotContain("Atelier");
  }

  @ParameterizedTest
  @MethodSource("doors")
  void noCookie(String door) throws Exception {
    refused(ask(door, desk.host), 403);
  }

  @ParameterizedTest
  @MethodSource("doors")
  void aWrongHost(String door) throws Exception {
    refused(ask(door, "Host: desk.example", desk.cookie), 421);
  }

  @ParameterizedTest
  @MethodSource("doors")
  void aForeignOrigin(String door) throws Exception {
    refused(ask(door, desk.host, desk.cookie, "Origin: https://shop.example"), 403);
  }

  @ParameterizedTest
  @MethodSource("doors")
  void anotherLocalPage(String door) throws Exception {
    refused(ask(door, desk.host, desk.cookie, "Sec-Fetch-Site: same-site"), 403);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"api/unlock", "api/people", "api/laptops", "api/backup", "api/passphrase"})
  void nothingIsDoneWithoutThePagesOwnHeader(String door) throws Exception {
    RawClient.Answer answer =
        desk.raw.send(
            "POST " + desk.path + door + " HTTP/1.1",
            desk.host,
            desk.cookie,
            "Content-Type: application/json",
            "Content-Length: 0");
    refused(answer, 403);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"lesson.html", "trial.html", "media/x/y", "print/x/y", "desk-ui/index.html"})
  void thePagesOfTheBenchAreNotHere(String place) throws Exception {
    assertThat(desk.get(place).status()).isEqualTo(404);
  }
}
