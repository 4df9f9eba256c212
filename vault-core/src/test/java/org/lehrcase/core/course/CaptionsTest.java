package org.lehrcase.core.course;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.table.Problem;

/** Section numbers are those of W3C, WebVTT: The Web Video Text Tracks Format. */
class CaptionsTest {

  @Test
  void readsTheSmallestFileOfSection1() {
    Captions captions =
        Captions.parse(
            "WEBVTT\n\n00:11.000 --> 00:13.000\n<v Ada>We lay the sheets\nside by side\n\n"
                + "00:13.000 --> 00:16.000\n- Which first?\n");
    assertThat(captions.problems()).isEmpty();
    assertThat(captions.cues())
        .containsExactly(
            new Cue(11_000, 13_000, "<v Ada>We lay the sheets\nside by side"),
            new Cue(13_000, 16_000, "- Which first?"));
  }

  @ParameterizedTest(name = "signature {0}")
  @ValueSource(strings = {"WEBVTT", "WEBVTT\n", "WEBVTT - title\n", "WEBVTT\tx\n", "WEBVTT\r\n"})
  void section41AllowsASpaceATabOrALineEndBehindTheSignature(String start) {
    assertThat(Captions.isWebVtt(start)).isTrue();
  }

  @ParameterizedTest(name = "signature {0}")
  @ValueSource(strings = {"WEBVTTX", "webvtt\n", " WEBVTT\n", "WEBVT", "1\n"})
  void anyOtherStartIsNotWebVtt(String start) {
    assertThat(Captions.isWebVtt(start)).isFalse();
  }

  @Test
  void section41SkipsAByteOrderMark() {
    Captions captions = Captions.parse("\uFEFFWEBVTT\n\n00:01.000 --> 00:02.000\nwash\n");
    assertThat(captions.cues()).hasSize(1);
  }

  @Test
  void section61TakesEveryLineEndAndTheHeaderUpToAnEmptyLine() {
    String text = "WEBVTT\rKind: captions\r\n\r00:01.000 --> 00:02.000\rwash\r\rNOTE\rno\r";
    Captions captions = Captions.parse(text);
    assertThat(captions.problems()).isEmpty();
    assertThat(captions.cues()).containsExactly(new Cue(1000, 2000, "wash"));
  }

  @Test
  void section61TakesACueThatFollowsTheHeaderWithoutAnEmptyLine() {
    Captions captions = Captions.parse("WEBVTT\n00:01.000 --> 00:02.000\nwash\n");
    assertThat(captions.cues()).containsExactly(new Cue(1000, 2000, "wash"));
  }

  @Test
  void section41NamesNotesStylesAndRegionsAreNoCaptions() {
    String text =
        "WEBVTT\n\nSTYLE\n::cue { color: red }\n\nREGION\nid:a\n\nNOTE a remark\nof two lines\n\n"
            + "second wash\n00:01.000 --> 00:02.000 align:start line:0\nwash\n";
    Captions captions = Captions.parse(text);
    assertThat(captions.problems()).isEmpty();
    assertThat(captions.cues()).containsExactly(new Cue(1000, 2000, "wash"));
  }

  @ParameterizedTest(name = "[{0}]")
  @CsvSource({
    "00:00.000,0",
    "59:59.999,3599999",
    "01:00:00.000,3600000",
    "100:00:00.001,360000001",
    "00:01:02.003,62003"
  })
  void section41TimesThatAreAllowed(String time, long millis) {
    assertThat(CueTime.ofCue(time)).hasValue(millis);
  }

  @ParameterizedTest(name = "[{0}]")
  @ValueSource(
      strings = {
        "1:00.000",
        "00:60.000",
        "60:00.000",
        "00:00.00",
        "00:00.0000",
        "00:00",
        "0:00:00.000",
        "00:0a.000",
        "-1:00.000",
        "00:00:00:00.000",
        "",
        "99999:00:00.000"
      })
  void section41TimesThatAreNot(String time) {
    assertThat(CueTime.ofCue(time)).isEmpty();
  }

  @Test
  void section41RefusesAnEndAtOrBeforeTheStart() {
    Captions captions =
        Captions.parse(
            "WEBVTT\n\n00:02.000 --> 00:02.000\na\n\n00:03.000 --> 00:01.000\nb\n\n"
                + "00:04.000 --> 00:05.000\nc\n");
    assertThat(captions.cues()).extracting(Cue::markup).containsExactly("c");
    assertThat(captions.problems()).extracting(Problem::line).containsExactly(3, 6);
  }

  @Test
  void section41ReportsAStartThatGoesBackButKeepsTheCaption() {
    Captions captions =
        Captions.parse("WEBVTT\n\n00:04.000 --> 00:05.000\na\n\n00:03.000 --> 00:06.000\nb\n");
    assertThat(captions.cues()).hasSize(2);
    assertThat(captions.problems()).extracting(Problem::line).containsExactly(6);
  }

  @ParameterizedTest(name = "[{0}]")
  @ValueSource(
      strings = {
        "00:01,000 --> 00:02,000",
        "x --> 00:02.000",
        "00:01.000 -->",
        "00:01.000-->00:02"
      })
  void aBadTimeLineIsReportedAndTheNextCaptionIsRead(String times) {
    Captions captions =
        Captions.parse("WEBVTT\n\n" + times + "\na\n\n00:03.000 --> 00:06.000\nb\n");
    assertThat(captions.cues()).extracting(Cue::markup).containsExactly("b");
    assertThat(captions.problems()).extracting(Problem::line).containsExactly(3);
  }

  @Test
  void section63AllowsTimesWithoutSpacesRoundTheArrow() {
    Captions captions = Captions.parse("WEBVTT\n\n00:01.000-->00:02.000\na\n");
    assertThat(captions.cues()).hasSize(1);
  }

  @Test
  void section61EndsTheTextAtALineWithAnArrow() {
    Captions captions =
        Captions.parse("WEBVTT\n\n00:01.000 --> 00:02.000\na\n00:02.000 --> 00:03.000\nb\n");
    assertThat(captions.cues()).extracting(Cue::markup).containsExactly("a", "b");
  }

  @Test
  void readsSubRipWithItsCountersAndCommas() {
    Captions captions =
        Captions.parse(
            "1\r\n00:00:01,500 --> 00:00:03,000\r\nfar water\r\nsecond line\r\n\r\n"
                + "2\r\n00:00:03,000 --> 00:00:04,000\r\nnear water\r\n");
    assertThat(captions.problems()).isEmpty();
    assertThat(captions.cues())
        .containsExactly(
            new Cue(1500, 3000, "far water\nsecond line"), new Cue(3000, 4000, "near water"));
  }

  @Test
  void subRipWithoutEmptyLinesLosesNoCaption() {
    Captions captions =
        Captions.parse(
            "1\n00:00:01,000 --> 00:00:02,000\na\n2\n00:00:02,000 --> 00:00:03,000\nb\n");
    assertThat(captions.cues()).extracting(Cue::markup).containsExactly("a", "b");
  }

  @Test
  void subRipMarkupBecomesWebVttMarkup() {
    Captions captions =
        Captions.parse(
            "1\n00:00:01,000 --> 00:00:02,000\n"
                + "{\\an8}<font color=\"red\">5 < 6 & <I>thin</I></font> <script>\n");
    assertThat(captions.cues().get(0).markup())
        .isEqualTo("5 &lt; 6 &amp; <i>thin</i> &lt;script&gt;");
    assertThat(captions.cues().get(0).plain()).isEqualTo("5 < 6 & thin <script>");
  }

  @Test
  void plainTextResolvesTheEscapesOfSection422() {
    assertThat(new Cue(0, 1, "<b>a</b>&nbsp;&lt;b&gt; &amp;lt; &lrm;c&rlm;").plain())
        .isEqualTo("a\u00A0<b> &lt; c");
  }

  @Test
  void subRipBecomesWebVttThatReadsTheSame() {
    Captions subRip = Captions.parse("1\n00:00:01,500 --> 01:00:03,000\na < b\nc\n");
    String webVtt = subRip.toWebVtt();
    assertThat(webVtt).startsWith("WEBVTT\n\n00:00:01.500 --> 01:00:03.000\na &lt; b\nc\n");
    assertThat(Captions.parse(webVtt)).isEqualTo(subRip);
  }

  @Test
  void textWithoutTimesIsReported() {
    Captions captions = Captions.parse("just a note to myself\n");
    assertThat(captions.cues()).isEmpty();
    assertThat(captions.problems()).extracting(Problem::line).containsExactly(1, 0);
  }

  @Test
  void whatRunsPastTheVideoIsFound() {
    Captions captions =
        Captions.parse("WEBVTT\n\n00:01.000 --> 00:02.000\na\n\n00:03.000 --> 00:06.000\nb\n");
    assertThat(captions.lastEndMillis()).hasValue(6000);
    assertThat(captions.endingAfter(5000)).extracting(Cue::markup).containsExactly("b");
    assertThat(captions.endingAfter(6000)).isEmpty();
    assertThat(Captions.parse("").lastEndMillis()).isEmpty();
  }

  @Test
  void anEndlessCaptionIsCutAndReported() {
    String text = "WEBVTT\n\n00:01.000 --> 00:02.000\n" + "<".repeat(100_000) + "\n";
    Captions captions = Captions.parse(text);
    assertThat(captions.cues().get(0).markup()).hasSize(2000);
    assertThat(captions.problems()).hasSize(1);
  }

  @Test
  void moreCaptionsThanTheLimitAreReported() {
    String one = "00:01.000 --> 00:02.000\na\n\n";
    Captions captions = Captions.parse("WEBVTT\n\n" + one.repeat(Captions.MAX_CUES + 1));
    assertThat(captions.cues()).hasSize(Captions.MAX_CUES);
    assertThat(captions.problems()).hasSize(1);
  }
}
