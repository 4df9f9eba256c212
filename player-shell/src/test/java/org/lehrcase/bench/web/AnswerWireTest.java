package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.bench.fixture.RawClient;

/** What every answer carries, and how the JSON API takes what it is given. */
class AnswerWireTest {
  private static ServerFixture bench;

  @BeforeAll
  static void start() throws IOException {
    bench = new ServerFixture();
  }

  @AfterAll
  static void stop() {
    bench.close();
  }

  @ParameterizedTest
  @ValueSource(strings = {"api/state", "api/nothing", "pdfjs/pdf.min.mjs", "media/x/y"})
  void everyAnswerCarriesTheSecurityHeadersAndNoVersion(String inside) throws IOException {
    RawClient.Answer answer = bench.get(inside);
    assertThat(answer.header("Content-Security-Policy").orElseThrow())
        .contains("default-src 'none'")
        .contains("frame-ancestors 'none'")
        .contains("require-trusted-types-for 'script'")
        .doesNotContain("unsafe-inline")
        .doesNotContain("http");
    assertThat(answer.header("Cross-Origin-Resource-Policy")).contains("same-origin");
    assertThat(answer.header("Referrer-Policy")).contains("no-referrer");
    assertThat(answer.header("X-Content-Type-Options")).contains("nosniff");
    assertThat(answer.header("Cache-Control")).contains("no-store");
    assertThat(answer.header("Server")).isEmpty();
    assertThat(String.join("\n", answer.headers())).doesNotContainIgnoringCase("jetty");
  }

  @Test
  void aFileOfACourseIsSandboxed() throws IOException {
    assertThat(bench.media().header("Content-Security-Policy").orElseThrow())
        .contains("default-src 'none'")
        .contains("sandbox");
  }

  @Test
  void aFailureInsideTellsAnIdAndNoDetail() throws IOException {
    RawClient.Answer answer = bench.get("api/broken");
    assertThat(answer.status()).isEqualTo(500);
    assertThat(answer.text())
        .contains("\"code\":\"internal\"")
        .doesNotContain("secret detail")
        .doesNotContain("Exception");
  }

  @Test
  void aMalformedRequestGetsAStatusAndNoWords() throws IOException {
    RawClient.Answer answer = bench.client.send("GET / HTTP/1.1", bench.host(), "bad header line");
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.body()).isEmpty();
  }

  @Test
  void jsonGoesInAndComesOut() throws IOException {
    RawClient.Answer answer = bench.post("api/echo", "application/json", "{\"a\":\"é\"}");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.header("Content-Type")).contains("application/json");
    assertThat(answer.text()).isEqualTo("{\"a\":\"é\"}");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "[]", "1", "{", "{} {}", "{a:1}", "{'a':1}", "{\"a\":NaN}", "// x\n{}"})
  void whatIsNotOneStrictObjectIsRefused(String body) throws IOException {
    RawClient.Answer answer = bench.post("api/echo", "application/json", body);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.text()).contains("\"code\":\"bad-request\"");
  }

  @Test
  void deepNestingIsRefused() throws IOException {
    String deep = "{\"a\":" + "[".repeat(50) + "]".repeat(50) + "}";
    assertThat(bench.post("api/echo", "application/json", deep).status()).isEqualTo(400);
  }

  @Test
  void aBodyAboveTheLimitIsRefused() throws IOException {
    String large = "{\"a\":\"" + "x".repeat(1 << 16) + "\"}";
    RawClient.Answer answer = bench.post("api/echo", "application/json", large);
    assertThat(answer.status()).isEqualTo(413);
  }

  @Test
  void aChunkedBodyAboveTheLimitIsRefused() throws IOException {
    int size = (1 << 16) + 10;
    String body = Integer.toHexString(size) + "\r\n" + "x".repeat(size) + "\r\n0\r\n\r\n";
    RawClient.Answer answer =
        bench.ask(
            "POST",
            "api/echo",
            body.getBytes(java.nio.charset.StandardCharsets.US_ASCII),
            "X-Lehrcase: 1",
            "Content-Type: application/json",
            "Transfer-Encoding: chunked");
    assertThat(answer.status()).isEqualTo(413);
  }

  @Test
  void aDroppedFileComesWithItsName() throws IOException {
    RawClient.Answer answer =
        bench.ask(
            "POST",
            "api/drop",
            new byte[7],
            "X-Lehrcase: 1",
            "Content-Type: application/octet-stream",
            "X-File-Name: Zo%C3%AB.txt",
            "Content-Length: 7");
    assertThat(answer.text()).isEqualTo("\"Zoë.txt 7\"");
  }

  @ParameterizedTest
  @CsvSource({"POST, api/state, 405", "GET, api/nothing, 404", "GET, api/jobs/7/stop, 404"})
  void whatIsNotAskedThisWayIsSaid(String method, String name, int status) throws IOException {
    assertThat(bench.ask(method, name, new byte[0], "X-Lehrcase: 1").status()).isEqualTo(status);
  }

  @Test
  void anIdInTheMiddleReachesItsAction() throws IOException {
    assertThat(bench.post("api/jobs/42/stop", "application/json", "{}").text()).isEqualTo("\"42\"");
  }

  @Test
  void thePdfViewerIsServedAsAModule() throws IOException {
    RawClient.Answer answer = bench.get("pdfjs/pdf.worker.min.mjs");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.header("Content-Type").orElseThrow()).startsWith("text/javascript");
    assertThat(bench.get("pdfjs/standard_fonts/LiberationSans-Regular.ttf").status())
        .isEqualTo(200);
    assertThat(bench.get("pdfjs/cmaps/UniJIS-UTF16-H.bcmap").status()).isEqualTo(200);
    assertThat(bench.get("pdfjs/wasm/openjpeg.wasm").header("Content-Type"))
        .contains("application/wasm");
  }
}
