package org.lehrcase.bench.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.lehrcase.bench.fixture.RawClient;

/** Byte ranges over a raw socket, as RFC 9110 sections 13 and 14 have them. */
class RangeWireTest {
  private static final int SIZE = 10_500;
  private ServerFixture bench;

  @BeforeEach
  void start() throws IOException {
    bench = new ServerFixture();
  }

  @AfterEach
  void stop() {
    bench.close();
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "bytes=0-0 | 0 | 1",
        "bytes=0-99 | 0 | 100",
        "BYTES=0-99 | 0 | 100",
        "bytes=999-1000 | 999 | 1001",
        "bytes=1000-1999 | 1000 | 2000",
        "bytes=10499-10499 | 10499 | 10500",
        "bytes=10499-99999 | 10499 | 10500",
        "bytes=500- | 500 | 10500",
        "bytes=0- | 0 | 10500",
        "bytes=-1 | 10499 | 10500",
        "bytes=-500 | 10000 | 10500",
        "bytes=-10500 | 0 | 10500",
        "bytes=-99999999999999999999999 | 0 | 10500",
        "bytes=7-99999999999999999999999 | 7 | 10500",
        "bytes=00000000000000000000000000007-9 | 7 | 10"
      })
  void oneRangeIsAnsweredExactly(String range, int from, int to) throws IOException {
    RawClient.Answer answer = bench.media("Range: " + range);
    assertThat(answer.status()).isEqualTo(206);
    assertThat(answer.header("Content-Range"))
        .contains("bytes " + from + "-" + (to - 1) + "/10500");
    assertThat(answer.header("Content-Length")).contains(String.valueOf(to - from));
    assertThat(answer.body()).isEqualTo(Arrays.copyOfRange(bench.content, from, to));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "bytes=",
        "bytes=-",
        "bytes=9-3",
        "bytes=a-b",
        "bytes=1-2x",
        "bytes=1--2",
        "bytes=+1-2",
        "bytes 1-2",
        "foo=1-2",
        "bytes=0-0,5-9",
        "bytes=0-,0-,0-,0-,0-",
        "bytes=0-0, 99999-"
      })
  void whatIsNotOneByteRangeIsAnsweredWithTheWhole(String range) throws IOException {
    RawClient.Answer answer = bench.media("Range: " + range);
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.header("Content-Range")).isEmpty();
    assertThat(answer.body()).isEqualTo(bench.content);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({"bytes=10500-", "bytes=10500-10600", "bytes=-0", "bytes=99999999999999999999-"})
  void aRangeBehindTheEndIs416WithTheLength(String range) throws IOException {
    RawClient.Answer answer = bench.media("Range: " + range);
    assertThat(answer.status()).isEqualTo(416);
    assertThat(answer.header("Content-Range")).contains("bytes */10500");
    assertThat(answer.body()).isEmpty();
  }

  @Test
  void twoRangeFieldsAreAnsweredWithTheWhole() throws IOException {
    RawClient.Answer answer = bench.media("Range: bytes=0-1", "Range: bytes=2-3");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.body()).hasSize(SIZE);
  }

  @Test
  void theWholeSaysThatRangesAreServed() throws IOException {
    RawClient.Answer answer = bench.media();
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.header("Accept-Ranges")).contains("bytes");
    assertThat(answer.header("ETag")).contains(ServerFixture.TAG);
    assertThat(answer.header("Content-Type")).contains("video/mp4");
    assertThat(answer.body()).isEqualTo(bench.content);
  }

  @Test
  void headAnswersAsGetWouldWithoutABodyAndIgnoresRange() throws IOException {
    String file = "media/" + ServerFixture.EDITION + "/" + ServerFixture.ASSET;
    RawClient.Answer answer = bench.ask("HEAD", file, new byte[0], "Range: bytes=0-1");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.header("Content-Length")).contains("10500");
    assertThat(answer.body()).isEmpty();
    assertThat(bench.segmentsOpened).hasValue(0);
  }

  @ParameterizedTest(name = "If-Range {0} gives {1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "\"0123456789abcdef\" | 206",
        "W/\"0123456789abcdef\" | 200",
        "\"fedcba\" | 200",
        "Wed, 25 Nov 2026 00:00:00 GMT | 200"
      })
  void ifRangeTakesOnlyOurStrongTag(String value, int status) throws IOException {
    RawClient.Answer answer = bench.media("Range: bytes=5-9", "If-Range: " + value);
    assertThat(answer.status()).isEqualTo(status);
    assertThat(answer.body()).hasSize(status == 206 ? 5 : SIZE);
  }

  @ParameterizedTest(name = "{0} gives {1}")
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '\'',
      value = {
        "If-None-Match: \"0123456789abcdef\" | 304",
        "If-None-Match: W/\"0123456789abcdef\" | 304",
        "If-None-Match: \"x\", \"0123456789abcdef\" | 304",
        "If-None-Match: * | 304",
        "If-None-Match: \"x\" | 200",
        "If-Match: \"0123456789abcdef\" | 200",
        "If-Match: * | 200",
        "If-Match: W/\"0123456789abcdef\" | 412",
        "If-Match: \"x\" | 412",
        "If-Modified-Since: Wed, 25 Nov 2026 00:00:00 GMT | 200"
      })
  void conditionsAreDecidedByTheTag(String header, int status) throws IOException {
    assertThat(bench.media(header).status()).isEqualTo(status);
  }

  @Test
  void onlyTheSegmentsOfTheRangeAreOpened() throws IOException {
    bench.media("Range: bytes=999-1000");
    assertThat(bench.segmentsOpened).hasValue(2);
  }

  @Test
  void anEmptyFileIsAnsweredEmptyAndHasNoRange() throws IOException {
    String empty = "media/" + ServerFixture.EDITION + "/" + ServerFixture.EMPTY_ASSET;
    assertThat(bench.get(empty).status()).isEqualTo(200);
    assertThat(bench.get(empty).body()).isEmpty();
    assertThat(bench.get(empty, "Range: bytes=0-0").status()).isEqualTo(416);
  }

  @Test
  void randomRangesEqualTheSameSliceAlsoOnASlowMedium() throws IOException {
    SplittableRandom cases = new SplittableRandom(7);
    for (int i = 0; i < 40; i++) {
      if (i == 20) {
        bench.pace.took(1_000_000_000L);
      }
      int from = cases.nextInt(SIZE);
      int to = from + 1 + cases.nextInt(SIZE - from);
      RawClient.Answer answer = bench.media("Range: bytes=" + from + "-" + (to - 1));
      assertThat(answer.body()).isEqualTo(Arrays.copyOfRange(bench.content, from, to));
    }
  }

  @Test
  void aDamagedSegmentEndsTheAnswerAndIsNoted() throws IOException {
    bench.damagedFrom = 5000;
    RawClient.Answer answer = bench.media("Range: bytes=3500-8999");
    assertThat(answer.status()).isEqualTo(206);
    assertThat(answer.header("Content-Length")).contains("5500");
    assertThat(answer.body()).hasSizeLessThanOrEqualTo(1500);
    assertThat(answer.body())
        .isEqualTo(Arrays.copyOfRange(bench.content, 3500, 3500 + answer.body().length));
    assertThat(bench.damageNotes).containsExactly(5000L);
  }

  @Test
  void damageAtTheFirstByteIsAnsweredInWords() throws IOException {
    bench.damagedFrom = 5000;
    RawClient.Answer answer = bench.media("Range: bytes=5000-8999");
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.text()).contains("\"code\":\"damaged\"").contains("\"next\":");
    assertThat(answer.header("Content-Range")).isEmpty();
    assertThat(bench.media("Range: bytes=0-99").status()).isEqualTo(206);
  }

  @Test
  void aStickThatIsAwayIs503InWords() throws IOException {
    bench.open = false;
    RawClient.Answer answer = bench.get("media/" + "e2".repeat(16) + "/" + ServerFixture.ASSET);
    assertThat(answer.status()).isEqualTo(503);
    assertThat(answer.text()).contains("\"code\":\"stick-gone\"");
  }

  @ParameterizedTest
  @CsvSource({"POST", "PUT", "DELETE", "PATCH", "OPTIONS"})
  void mediaIsOnlyRead(String method) throws IOException {
    String file = "media/" + ServerFixture.EDITION + "/" + ServerFixture.ASSET;
    assertThat(bench.ask(method, file, new byte[0], "X-Lehrcase: 1").status()).isEqualTo(405);
    assertThat(bench.segmentsOpened).hasValue(0);
  }
}
