package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.fixture.RawClient;

/** What one can twist in a request line and in the fields that decide who asks. */
class StrangerTricksWireTest {
  private static ServerFixture bench;

  @BeforeAll
  static void start() throws IOException {
    bench = new ServerFixture();
  }

  @AfterAll
  static void stop() {
    bench.close();
  }

  /** One trick: what is tried, the lines sent; whatever comes back, it is no content. */
  record Trick(String what, String... lines) {
    @Override
    public String toString() {
      return what;
    }
  }

  private static Trick path(String what, String path) {
    return new Trick(what, "GET " + path + " HTTP/1.1", bench.host(), bench.cookie);
  }

  static Stream<Trick> paths() {
    String own = bench.path;
    String inside = own.substring(0, own.length() - 1);
    String file = "media/" + ServerFixture.EDITION + "/" + ServerFixture.ASSET;
    return Stream.of(
        path("dots encoded", own + "ui/%2e%2e/api/state"),
        path("dots encoded in capitals", own + "ui/%2E%2E/api/state"),
        path("dots encoded twice", own + "ui/%252e%252e/api/state"),
        path("one dot encoded", own + "%2e/api/state"),
        path("a slash encoded", inside + "%2fapi/state"),
        path("a slash encoded twice", inside + "%252fapi%252fstate"),
        path("a backslash", own + "api\\state"),
        path("a backslash encoded", own + "api%5cstate"),
        path("backslashes up", own + "ui\\..\\..\\study.db"),
        path("an overlong slash (RFC 3629, section 10)", own + "api%c0%afstate"),
        path("overlong dots", own + "ui/%c0%ae%c0%ae/study.db"),
        path("a wide slash that folds to a plain one", own + "api%ef%bc%8fstate"),
        path("NUL at the end", own + "api/state%00"),
        path("NUL in the middle", own + "ui/x.html%00.png"),
        path("a line break encoded", own + "api/state%0d%0aX-Lehrcase:%201"),
        path("a blank encoded", own + "api/state%20"),
        path("a path parameter", own + "api/state;jsessionid=1"),
        path("a path parameter on the secret", inside + ";x/api/state"),
        path("an empty segment", own + "/api/state"),
        path("an encoded letter of the secret", "/%" + hexOf(own.charAt(1)) + own.substring(2)),
        path("the secret in capitals", own.toUpperCase(java.util.Locale.ROOT) + "api/state"),
        path("the secret cut", own.substring(0, 32) + "/api/state"),
        path("the secret twice", inside + own + "api/state"),
        path("up and in again", own + "../" + own.substring(1) + "api/state"),
        path("the entry above the pages", "/enter/.." + own + "api/state"),
        path("a media file behind dots", own + "ui/../" + file),
        path("a media file with a slash behind", own + file + "/"),
        path("a media id in capitals", own + file.toUpperCase(java.util.Locale.ROOT)),
        path("a path of 9000 letters", own + "a".repeat(9000)),
        path("a broken escape", own + "api/%zz"),
        path("an escape cut off", own + "api/state%"),
        path("an octet above ASCII", own + "api/stat\u00e9"),
        path("the asterisk", "*"),
        path("no slash in front", own.substring(1) + "api/state"));
  }

  private static String hexOf(char letter) {
    return Integer.toHexString(letter);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("paths")
  void noTrickWithAPathReachesAnything(Trick trick) throws IOException {
    RawClient.Answer answer = bench.client.send(trick.lines());
    assertThat(answer.status()).isIn(400, 404, 414, 421, 431);
    assertNothingIsTold(answer);
  }

  private static void assertNothingIsTold(RawClient.Answer answer) {
    assertThat(answer.text()).isNotEqualTo("{}").doesNotContain(bench.path);
    assertThat(answer.header("Set-Cookie")).isEmpty();
    assertThat(answer.header("Content-Range")).isEmpty();
    assertThat(answer.body().length).isLessThan(4000);
  }

  private static Trick asked(String what, String... more) {
    String[] lines = new String[more.length + 1];
    lines[0] = "GET " + bench.path + "api/state HTTP/1.1";
    System.arraycopy(more, 0, lines, 1, more.length);
    return new Trick(what, lines);
  }

  static Stream<Trick> fields() {
    String host = bench.host();
    String cookie = bench.cookie;
    int port = bench.server.port();
    return Stream.of(
        asked("two hosts, ours first", host, "Host: evil.example", cookie),
        asked("two hosts, ours last", "Host: evil.example", host, cookie),
        asked("no host", cookie),
        asked("an empty host", "Host:", cookie),
        asked("our host with a user", "Host: x@127.0.0.1:" + port, cookie),
        asked("our host with a dot behind", "Host: 127.0.0.1.:" + port, cookie),
        asked("our host as one number", "Host: 2130706433:" + port, cookie),
        asked("our host as IPv6", "Host: [::1]:" + port, cookie),
        asked("our host mapped into IPv6", "Host: [::ffff:127.0.0.1]:" + port, cookie),
        asked("our host, port with a zero", "Host: 127.0.0.1:0" + port, cookie),
        asked("another loopback address", "Host: 127.0.0.2:" + port, cookie),
        asked(
            "our name in another field", "Host: evil.example", "X-Forwarded-Host: " + host, cookie),
        asked("our origin over TLS", host, cookie, "Origin: https://127.0.0.1:" + port),
        asked("our origin by name", host, cookie, "Origin: http://localhost:" + port),
        asked("our origin with a slash", host, cookie, "Origin: http://127.0.0.1:" + port + "/"),
        asked(
            "our origin as a prefix",
            host,
            cookie,
            "Origin: http://127.0.0.1:" + port + ".evil.example"),
        asked("an origin of a file", host, cookie, "Origin: file://"),
        asked("an empty origin", host, cookie, "Origin:"),
        asked("a site word in capitals", host, cookie, "Sec-Fetch-Site: Same-Origin"),
        asked("an unknown site word", host, cookie, "Sec-Fetch-Site: same-party"),
        asked(
            "two site words in one field", host, cookie, "Sec-Fetch-Site: same-origin, cross-site"),
        asked("the cookie of another name", host, cookie.replace("lehrcase", "Lehrcase")),
        asked("the cookie cut", host, cookie.substring(0, cookie.length() - 1)),
        asked("the cookie longer", host, cookie + "0"),
        asked("the cookie in capitals", host, cookie.toUpperCase(java.util.Locale.ROOT)),
        asked("the cookie as a bearer", host, "Authorization: Bearer " + cookie.split("=")[1]),
        asked("the cookie in the wrong field", host, cookie.replace("Cookie:", "Cookie2:")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("fields")
  void whoeverAsksTwistedIsNobody(Trick trick) throws IOException {
    RawClient.Answer answer = bench.client.send(trick.lines());
    assertThat(answer.status()).isIn(400, 403, 421);
    assertNothingIsTold(answer);
  }

  private static Trick sent(String what, String method, String... more) {
    String[] lines = new String[more.length + 3];
    lines[0] = method + " " + bench.path + "api/echo HTTP/1.1";
    lines[1] = bench.host();
    lines[2] = bench.cookie;
    System.arraycopy(more, 0, lines, 3, more.length);
    return new Trick(what, lines);
  }

  static Stream<Trick> methods() {
    String json = "Content-Type: application/json";
    return Stream.of(
        sent("a method in small letters", "post", "X-Lehrcase: 1", json, "Content-Length: 0"),
        sent("a method of other systems", "PROPFIND", "X-Lehrcase: 1"),
        sent("a tunnel", "CONNECT", "X-Lehrcase: 1"),
        sent("the method in a field", "GET", "X-HTTP-Method-Override: POST", "X-Lehrcase: 1"),
        sent("our header with another value", "POST", "X-Lehrcase: 2", json, "Content-Length: 0"),
        sent("our header empty", "POST", "X-Lehrcase:", json, "Content-Length: 0"),
        sent(
            "a simple form with our header",
            "POST",
            "X-Lehrcase: 1",
            "Content-Type: text/plain",
            "Content-Length: 0"),
        sent(
            "a type that begins like ours",
            "POST",
            "X-Lehrcase: 1",
            "Content-Type: application/jsonp",
            "Content-Length: 0"),
        sent("no type", "POST", "X-Lehrcase: 1", "Content-Length: 0"),
        sent(
            "two lengths (RFC 9112, section 6.3)",
            "POST",
            "X-Lehrcase: 1",
            json,
            "Content-Length: 0",
            "Content-Length: 5"),
        sent(
            "a length and chunks (RFC 9112, section 6.1)",
            "POST",
            "X-Lehrcase: 1",
            json,
            "Content-Length: 5",
            "Transfer-Encoding: chunked"),
        sent("a negative length", "POST", "X-Lehrcase: 1", json, "Content-Length: -1"),
        sent(
            "a field folded over two lines",
            "POST",
            "X-Lehrcase:",
            " 1",
            json,
            "Content-Length: 0"),
        sent("a blank before the colon", "POST", "X-Lehrcase : 1", json, "Content-Length: 0"));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("methods")
  void nothingIsWrittenByATwistedRequest(Trick trick) throws IOException {
    RawClient.Answer answer = bench.client.send(trick.lines());
    assertThat(answer.status()).isBetween(400, 505);
    assertNothingIsTold(answer);
  }
}
