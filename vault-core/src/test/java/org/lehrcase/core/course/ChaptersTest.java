package org.lehrcase.core.course;

import static org.assertj.core.api.Assertions.assertThat;

import java.security.SecureRandom;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.table.Problem;

class ChaptersTest {

  @Test
  void aPlainListGivesTimesWordsAndHints() {
    Chapters chapters = Chapters.parse("0:00 lay out\n12:40 second wash [p3] [template 4]\n");
    assertThat(chapters.problems()).isEmpty();
    ChapterMark wash = chapters.marks().get(1);
    assertThat(wash.atMillis()).isEqualTo(760_000);
    assertThat(wash.text()).isEqualTo("second wash");
    assertThat(wash.line()).isEqualTo(2);
    assertThat(wash.hints())
        .containsExactly(
            new MomentHint(MomentTarget.PAGE, "3"), new MomentHint(MomentTarget.TEMPLATE, "4"));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({"0:05,5000", "12:40,760000", "75:00,4500000", "1:02:03,3723000", "0:01.5,1500"})
  void timesAsPeopleWriteThem(String written, long millis) {
    Chapters chapters = Chapters.parse(written + " fire");
    assertThat(chapters.marks()).extracting(ChapterMark::atMillis).containsExactly(millis);
  }

  @ParameterizedTest(name = "{0}")
  @ValueSource(
      strings = {"second wash", "12 wash", "12:4 wash", "12:61 wash", "1:75:00 w", "12:40"})
  void aLineWithoutTimeOrWordsIsReported(String line) {
    Chapters chapters = Chapters.parse(line + "\n0:01 ok\n");
    assertThat(chapters.marks()).extracting(ChapterMark::text).containsExactly("ok");
    assertThat(chapters.problems()).extracting(Problem::line).containsExactly(1);
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource({
    "[page 12],PAGE,12",
    "[P3],PAGE,3",
    "[p007],PAGE,7",
    "[template corner marks],TEMPLATE,corner marks",
    "[Materials],MATERIALS,''",
    "[firing F2],FIRING,F2",
    "[image bubbles],IMAGE,bubbles"
  })
  void everyKindOfHint(String written, MomentTarget target, String label) {
    Chapters chapters = Chapters.parse("0:01 look " + written);
    assertThat(chapters.marks().get(0).hints()).containsExactly(new MomentHint(target, label));
    assertThat(chapters.marks().get(0).text()).isEqualTo("look");
  }

  @Test
  void otherBracketsAreText() {
    ChapterMark mark = Chapters.parse("0:01 wash [thin]").marks().get(0);
    assertThat(mark.text()).isEqualTo("wash [thin]");
    assertThat(mark.hints()).isEmpty();
  }

  @Test
  void remarksEmptyLinesAndDashesAreFine() {
    Chapters chapters = Chapters.parse("\uFEFF# marks\n\n0:01 - mix\n0:02 – paint\n");
    assertThat(chapters.problems()).isEmpty();
    assertThat(chapters.marks()).extracting(ChapterMark::text).containsExactly("mix", "paint");
  }

  @Test
  void aWrongOrderIsReportedAndPutRight() {
    Chapters chapters = Chapters.parse("0:09 b\n0:01 a\n");
    assertThat(chapters.marks()).extracting(ChapterMark::text).containsExactly("a", "b");
    assertThat(chapters.problems()).extracting(Problem::line).containsExactly(2);
  }

  @Test
  void webVttChaptersReadTheSame() {
    Chapters chapters = Chapters.parse("WEBVTT\n\n00:01.000 --> 00:09.000\npaint &amp; dry [p2]\n");
    assertThat(chapters.marks()).extracting(ChapterMark::text).containsExactly("paint & dry");
    assertThat(chapters.marks().get(0).hints()).hasSize(1);
  }

  @Test
  void aHintBecomesAMomentIfTheLessonHasTheFile() {
    AssetId sheet = AssetId.random(new SecureRandom());
    ChapterMark mark = Chapters.parse("0:01 wash [p3] [template 4]").marks().get(0);
    assertThat(mark.moments(h -> Optional.of(sheet)))
        .containsExactly(
            new Moment(1000, "wash", MomentTarget.PAGE, Optional.of(sheet), 3),
            new Moment(1000, "wash", MomentTarget.TEMPLATE, Optional.of(sheet), 0));
    assertThat(mark.moments(h -> Optional.empty())).containsExactly(Moment.named(1000, "wash"));
  }

  @Test
  void pageZeroOpensNothing() {
    AssetId sheet = AssetId.random(new SecureRandom());
    ChapterMark mark = Chapters.parse("0:01 wash [p0]").marks().get(0);
    assertThat(mark.moments(h -> Optional.of(sheet))).containsExactly(Moment.named(1000, "wash"));
  }

  @Test
  void anEndlessLineIsCut() {
    Chapters chapters = Chapters.parse("0:01 " + "[image ".repeat(50_000));
    assertThat(chapters.marks().get(0).text()).hasSizeLessThanOrEqualTo(CourseText.MAX_NAME);
  }
}
