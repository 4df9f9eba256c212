package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.bench.fixture.RawClient;

/** Two benches on one machine, or two starts of one: nothing of the one opens the other. */
class OtherBenchWireTest {
  private static ServerFixture mine;
  private static ServerFixture other;

  @BeforeAll
  static void start() throws IOException {
    mine = new ServerFixture();
    other = new ServerFixture();
  }

  @AfterAll
  static void stop() {
    mine.close();
    other.close();
  }

  record Stale(String what, int status, String... lines) {
    @Override
    public String toString() {
      return what;
    }
  }

  static Stream<Stale> stale() throws IOException {
    String host = mine.host();
    String knock = "X-Lehrcase-Knock: " + other.server.knockWord();
    return Stream.of(
        new Stale("its cookie", 403, "GET " + mine.path + "api/state HTTP/1.1", host, other.cookie),
        new Stale("its path", 404, "GET " + other.path + "api/state HTTP/1.1", host, mine.cookie),
        new Stale("both", 404, "GET " + other.path + "api/state HTTP/1.1", host, other.cookie),
        new Stale("its token", 404, "GET " + other.entryPath() + " HTTP/1.1", host),
        new Stale("its knock word", 403, "POST /knock HTTP/1.1", host, knock, "Content-Length: 0"),
        new Stale(
            "its host", 421, "GET " + mine.path + "api/state HTTP/1.1", other.host(), mine.cookie));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("stale")
  void whatOpensAnotherStartOpensNothingHere(Stale stale) throws IOException {
    RawClient.Answer answer = mine.client.send(stale.lines());
    assertThat(answer.status()).isEqualTo(stale.status());
    assertThat(answer.header("Set-Cookie")).isEmpty();
  }

  @Test
  void aBrowserThatSendsBothCookiesIsLetInByTheRightOne() throws IOException {
    String both = other.cookie + "; " + mine.cookie.replace("Cookie: ", "");
    RawClient.Answer answer =
        mine.client.send("GET " + mine.path + "api/state HTTP/1.1", mine.host(), both);
    assertThat(answer.status()).isEqualTo(200);
  }

  /** Somebody who presses the icon twenty times leaves no twenty doors open. */
  @Test
  void onlyTheNewestFewTokensLeadIn() throws IOException {
    String[] doors = IntStream.range(0, 20).mapToObj(i -> mine.entryPath()).toArray(String[]::new);
    RawClient.Answer first = mine.client.send("GET " + doors[0] + " HTTP/1.1", mine.host());
    RawClient.Answer last = mine.client.send("GET " + doors[19] + " HTTP/1.1", mine.host());
    assertThat(first.status()).isEqualTo(404);
    assertThat(last.status()).isEqualTo(200);
  }
}
