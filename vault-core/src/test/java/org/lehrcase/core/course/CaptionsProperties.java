package org.lehrcase.core.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.Seeds;

/** Captions and chapters: what is written is read back, and whatever is read can be written. */
class CaptionsProperties {
  private static final String[] TEXTS = {
    "Looking into water",
    "two\nlines",
    "Grün – far",
    "ガラス",
    "5 and 6",
    "the \"wash\"",
    "<i>slow</i>"
  };

  static LongStream seeds() {
    return Seeds.some(60);
  }

  private static List<Cue> cues(SplittableRandom random) {
    List<Cue> cues = new ArrayList<>();
    long at = 0;
    for (int i = random.nextInt(1, 30); i > 0; i--) {
      at += random.nextInt(0, 200_000);
      long end = at + random.nextInt(1, 10_000);
      cues.add(new Cue(at, end, TEXTS[random.nextInt(TEXTS.length)]));
    }
    return cues;
  }

  private static String subRip(List<Cue> cues) {
    var text = new StringBuilder();
    for (int i = 0; i < cues.size(); i++) {
      Cue cue = cues.get(i);
      text.append(i + 1)
          .append("\r\n")
          .append(CueTime.format(cue.startMillis()).replace('.', ','))
          .append(" --> ")
          .append(CueTime.format(cue.endMillis()).replace('.', ','))
          .append("\r\n")
          .append(cue.markup().replace("\n", "\r\n"))
          .append("\r\n\r\n");
    }
    return text.toString();
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void whatIsWrittenAsWebVttIsReadBack(long seed) {
    List<Cue> cues = cues(new SplittableRandom(seed));
    Captions captions = new Captions(cues, List.of());
    Captions read = Captions.parse(captions.toWebVtt());
    assertThat(read.problems()).isEmpty();
    assertThat(read.cues()).isEqualTo(cues);
    assertThat(read.toWebVtt()).isEqualTo(captions.toWebVtt());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theOtherFormGivesTheSameTimesAndWords(long seed) {
    List<Cue> cues = cues(new SplittableRandom(seed));
    Captions read = Captions.parse(subRip(cues));
    assertThat(read.problems()).isEmpty();
    assertThat(read.cues().stream().map(Cue::plain))
        .containsExactlyElementsOf(cues.stream().map(Cue::plain).toList());
    assertThat(read.cues().stream().map(Cue::startMillis))
        .containsExactlyElementsOf(cues.stream().map(Cue::startMillis).toList());
    assertThat(Captions.parse(read.toWebVtt()).cues()).isEqualTo(read.cues());
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void theEndIsThatOfTheLastCaptionToGo(long seed) {
    Captions captions = new Captions(cues(new SplittableRandom(seed)), List.of());
    long last = captions.lastEndMillis().orElseThrow();
    assertThat(captions.endingAfter(last)).isEmpty();
    assertThat(captions.endingAfter(last - 1)).isNotEmpty();
    assertThat(captions.endingAfter(-1)).isEqualTo(captions.cues());
  }

  /** Lines as a broken file has them, in any order. */
  private static String broken(SplittableRandom random) {
    String[] lines = {
      "WEBVTT",
      "",
      "",
      "NOTE a",
      "STYLE",
      "1",
      "00:01.000 --> 00:02.000",
      "00:02,000 --> 00:01,000",
      "--> 00:01",
      "99:99:99.999 --> x",
      "<b>bold",
      "&amp; &lt; &bogus;",
      "{\\an8}up",
      "\u202Eturned",
      "00:00:01.000 --> 00:00:02.000 line:0 position:20%",
      "word ".repeat(700),
      "\0"
    };
    return IntStream.range(0, 40)
        .mapToObj(i -> lines[random.nextInt(lines.length)])
        .collect(Collectors.joining(random.nextBoolean() ? "\n" : "\r\n"));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void anyFileIsReadAndWhatWasReadCanBeWritten(long seed) {
    var random = new SplittableRandom(seed);
    String text = (random.nextBoolean() ? "WEBVTT\n\n" : "") + broken(random);
    Captions captions = Captions.parse(text);
    assertThat(captions.cues()).allMatch(c -> c.endMillis() > c.startMillis());
    assertThat(captions.problems()).allMatch(p -> p.line() >= 0 && p.line() <= 45);
    String written = captions.toWebVtt();
    assertThat(written).startsWith("WEBVTT\n");
    assertThatCode(() -> Captions.parse(written)).doesNotThrowAnyException();
    assertThat(Captions.parse(written).cues().stream().map(Cue::startMillis))
        .containsExactlyElementsOf(captions.cues().stream().map(Cue::startMillis).toList());
  }

  private static String listTime(long seconds, SplittableRandom random) {
    boolean hours = seconds >= 3600 || random.nextInt(4) == 0;
    return hours
        ? String.format(
            Locale.ROOT, "%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60)
        : String.format(Locale.ROOT, "%d:%02d", seconds / 60, seconds % 60);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aChapterListIsReadInTheOrderOfTime(long seed) {
    var random = new SplittableRandom(seed);
    long[] times = random.longs(20, 0, 9000).distinct().sorted().toArray();
    var text = new StringBuilder("# written by hand\n\n");
    for (long time : times) {
      String gap = List.of(" ", " - ", " – ", "\t").get(random.nextInt(4));
      text.append(listTime(time, random)).append(gap).append("wash ").append(time).append("\n");
    }
    Chapters chapters = Chapters.parse(text.toString());
    assertThat(chapters.problems()).isEmpty();
    assertThat(chapters.marks().stream().mapToLong(m -> m.atMillis() / 1000))
        .containsExactly(LongStream.of(times).boxed().toArray(Long[]::new));
    assertThat(chapters.marks()).allMatch(m -> m.text().startsWith("wash "));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void hintsAreTakenOutOfTheWordsWhereverTheyStand(long seed) {
    var random = new SplittableRandom(seed);
    int page = random.nextInt(1, 1000);
    String hint = List.of("[p%d]", "[page %d]", "[ P %d ]").get(random.nextInt(3));
    String shown = String.format(Locale.ROOT, hint, page);
    String line =
        random.nextBoolean() ? "1:00 second " + shown + " wash" : "1:00 second wash " + shown;
    ChapterMark mark = Chapters.parse(line).marks().get(0);
    assertThat(mark.text()).isEqualTo("second wash");
    assertThat(mark.hints()).hasSize(1);
    assertThat(mark.hints().get(0).target()).isEqualTo(MomentTarget.PAGE);
    assertThat(mark.hints().get(0).page()).isEqualTo(page);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void aMaterialsListComesBackFromItsTable(long seed) {
    var random = new SplittableRandom(seed);
    var text = new StringBuilder("Item;Amount;Unit;Per;Item_No\n");
    int rows = random.nextInt(1, 20);
    for (int i = 0; i < rows; i++) {
      AmountPer per = AmountPer.values()[random.nextInt(AmountPer.values().length)];
      text.append("rod ").append(i).append(';').append(i + 1).append(",5;g;");
      text.append(per.word().toUpperCase(Locale.ROOT)).append(";N-").append(i).append('\n');
    }
    MaterialsList list = MaterialsList.parse(text.toString());
    assertThat(list.problems()).isEmpty();
    assertThat(list.rows()).hasSize(rows);
    for (int i = 0; i < rows; i++) {
      MaterialsRow row = list.rows().get(i);
      assertThat(row.item()).isEqualTo("rod " + i);
      assertThat(row.amount().orElseThrow()).isEqualByComparingTo(i + 1 + ".5");
      assertThat(row.itemNo()).isEqualTo("N-" + i);
    }
  }
}
