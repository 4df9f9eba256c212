package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.RawClient;

/** Everybody who is not the bench's own page gets nothing; one row each, with the reason. */
class StrangerWireTest {
  private static ServerFixture bench;

  @BeforeAll
  static void start() throws IOException {
    bench = new ServerFixture();
  }

  @AfterAll
  static void stop() {
    bench.close();
  }

  /** One stranger: who, the lines sent, the status that must come back. */
  record Stranger(String who, int status, String... lines) {
    @Override
    public String toString() {
      return who;
    }
  }

  static Stream<Stranger> strangers() {
    String state = "GET " + bench.path + "api/state HTTP/1.1";
    String host = bench.host();
    String cookie = bench.cookie;
    int other = bench.server.port() + 1;
    return Stream.of(
        new Stranger("knows the path, has no cookie", 403, state, host),
        new Stranger("guesses a cookie", 403, state, host, "Cookie: lehrcase=" + "0".repeat(32)),
        new Stranger("sends an empty cookie", 403, state, host, "Cookie: lehrcase="),
        new Stranger(
            "has the cookie, guesses the path",
            404,
            "GET /" + "0".repeat(32) + "/api/state HTTP/1.1",
            host,
            cookie),
        new Stranger("asks for the root", 404, "GET / HTTP/1.1", host, cookie),
        new Stranger("rebinds a name to the loopback", 421, state, "Host: evil.example", cookie),
        new Stranger(
            "rebinds a name with our port",
            421,
            state,
            "Host: evil.example:" + bench.server.port(),
            cookie),
        new Stranger(
            "says localhost", 421, state, "Host: localhost:" + bench.server.port(), cookie),
        new Stranger("leaves the port out", 421, state, "Host: 127.0.0.1", cookie),
        new Stranger("speaks HTTP/1.0 without Host", 421, state.replace("1.1", "1.0"), cookie),
        new Stranger(
            "names another authority in the request line",
            400,
            "GET http://evil.example" + bench.path + "api/state HTTP/1.1",
            host,
            cookie),
        new Stranger(
            "a page of a foreign origin", 403, state, host, cookie, "Origin: https://evil.example"),
        new Stranger(
            "a page of another local port",
            403,
            state,
            host,
            cookie,
            "Origin: http://127.0.0.1:" + other),
        new Stranger(
            "a page without an origin of its own", 403, state, host, cookie, "Origin: null"),
        new Stranger(
            "a page of another port: same-site",
            403,
            state,
            host,
            cookie,
            "Sec-Fetch-Site: same-site"),
        new Stranger("another site", 403, state, host, cookie, "Sec-Fetch-Site: cross-site"),
        new Stranger(
            "two answers to where it comes from",
            403,
            state,
            host,
            cookie,
            "Sec-Fetch-Site: same-origin",
            "Sec-Fetch-Site: cross-site"),
        new Stranger(
            "posts without our header",
            403,
            "POST " + bench.path + "api/echo HTTP/1.1",
            host,
            cookie,
            "Content-Type: application/json",
            "Content-Length: 0"),
        new Stranger(
            "posts a form",
            400,
            "POST " + bench.path + "api/echo HTTP/1.1",
            host,
            cookie,
            "X-Lehrcase: 1",
            "Content-Type: application/x-www-form-urlencoded",
            "Content-Length: 0"),
        new Stranger(
            "deletes",
            405,
            "DELETE " + bench.path + "api/state HTTP/1.1",
            host,
            cookie,
            "X-Lehrcase: 1"),
        new Stranger(
            "asks what is allowed (CORS preflight)",
            403,
            "OPTIONS " + bench.path + "api/echo HTTP/1.1",
            host,
            "Origin: http://127.0.0.1:" + other),
        new Stranger("traces", 405, "TRACE " + bench.path + "api/state HTTP/1.1", host, cookie),
        new Stranger("knocks without the word", 403, "POST /knock HTTP/1.1", host),
        new Stranger(
            "knocks with a guess",
            403,
            "POST /knock HTTP/1.1",
            host,
            "X-Lehrcase-Knock: " + "0".repeat(32)),
        new Stranger("guesses a token", 404, "GET /enter/" + "0".repeat(32) + " HTTP/1.1", host));
  }

  @ParameterizedTest
  @MethodSource("strangers")
  void isTurnedAwayWithoutACookieOrAWordOfContent(Stranger stranger) throws IOException {
    RawClient.Answer answer = bench.client.send(stranger.lines());
    assertThat(answer.status()).isEqualTo(stranger.status());
    assertThat(answer.header("Set-Cookie")).isEmpty();
    assertThat(answer.header("Access-Control-Allow-Origin")).isEmpty();
    assertThat(answer.text()).doesNotContain(bench.path);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../api/state",
        "./api/state",
        "ui/../../etc/passwd",
        "ui/%2e%2e/%2e%2e/etc/passwd",
        "ui/..%2f..%2fetc/passwd",
        "ui/.hidden",
        "ui//etc/passwd",
        "//etc/passwd",
        "api%2fstate",
        "api/state;x=y",
        "ui\\..\\x",
        "ui/%00.html",
        "pdfjs/legacy/build/pdf.min.mjs",
        "pdfjs/pdf.min.mjs.map",
        "pdfjs/build/pdf.mjs",
        "pdfjs/package.json",
        "ui/org/lehrcase/bench/BenchMain.class",
        "media/x/y",
        "media/..",
        "study.db"
      })
  void noTrickWithAPathLeadsAnywhere(String inside) throws IOException {
    assertThat(bench.get(inside).status()).isIn(400, 404);
  }

  @Test
  void aPathOfThousandsOfSegmentsIsTurnedAwayInsideAndOutside() throws IOException {
    String deep = "a/".repeat(3500) + "a";
    assertThat(bench.get("ui/" + deep).status()).isIn(400, 404, 414);
    assertThat(bench.client.send("GET /" + deep + " HTTP/1.1", bench.host()).status())
        .isIn(400, 404, 414);
  }

  @Test
  void aTokenWorksOnce() throws IOException {
    String enter = "GET " + bench.entryPath() + " HTTP/1.1";
    assertThat(bench.client.send(enter, bench.host()).status()).isEqualTo(200);
    RawClient.Answer again = bench.client.send(enter, bench.host());
    assertThat(again.status()).isEqualTo(404);
    assertThat(again.header("Set-Cookie")).isEmpty();
    assertThat(again.text()).contains("Start Lehrcase from its icon");
  }

  @ParameterizedTest(name = "site {0}, mode {1}, destination {2} gives {3}")
  @CsvSource({
    "cross-site, navigate, document, 200",
    "none, navigate, document, 200",
    "cross-site, navigate, iframe, 403",
    "cross-site, no-cors, image, 403",
    "cross-site, cors, empty, 403",
    "same-site, no-cors, script, 403"
  })
  void onlyAPageOfItsOwnMayEnterFromElsewhere(String site, String mode, String dest, int status)
      throws IOException {
    RawClient.Answer answer =
        bench.client.send(
            "GET " + bench.entryPath() + " HTTP/1.1",
            bench.host(),
            "Sec-Fetch-Site: " + site,
            "Sec-Fetch-Mode: " + mode,
            "Sec-Fetch-Dest: " + dest);
    assertThat(answer.status()).isEqualTo(status);
    assertThat(answer.header("Set-Cookie").isPresent()).isEqualTo(status == 200);
  }

  @Test
  void theEntrySetsAStrictCookieForTheSecretPathOnlyAndMovesOnByScript() throws IOException {
    RawClient.Answer answer =
        bench.client.send("GET " + bench.entryPath() + " HTTP/1.1", bench.host());
    assertThat(answer.header("Set-Cookie").orElseThrow())
        .matches("lehrcase=[0-9a-f]{32}; Path=/[0-9a-f]{32}/; HttpOnly; SameSite=Strict");
    assertThat(answer.header("Location")).isEmpty();
    assertThat(answer.text()).contains("src=\"/enter/move.js\"").doesNotContain("<script>");
    assertThat(bench.client.send("GET /enter/move.js HTTP/1.1", bench.host()).text())
        .contains("location.replace");
  }

  @Test
  void postToTheEntryDoesNotUseTheTokenUp() throws IOException {
    String path = bench.entryPath();
    assertThat(bench.client.send("POST " + path + " HTTP/1.1", bench.host()).status())
        .isEqualTo(404);
    assertThat(bench.client.send("GET " + path + " HTTP/1.1", bench.host()).status())
        .isEqualTo(200);
  }

  @Test
  void aSecondStartThatKnowsTheWordGetsAWayIn() throws IOException {
    RawClient.Answer answer =
        bench.client.send(
            "POST /knock HTTP/1.1",
            bench.host(),
            "X-Lehrcase-Knock: " + bench.server.knockWord(),
            "Content-Length: 0");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.text()).matches("\\{\"enter\":\"/enter/[0-9a-f]{32}\"}");
  }

  @Test
  void anAddressOfAnEarlierStartSaysWhatToDo() throws IOException {
    RawClient.Answer answer =
        bench.client.send("GET /" + "ab".repeat(16) + "/ HTTP/1.1", bench.host());
    assertThat(answer.status()).isEqualTo(404);
    assertThat(answer.text()).contains("Start Lehrcase from its icon");
  }
}
