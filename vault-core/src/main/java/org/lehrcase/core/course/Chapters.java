package org.lehrcase.core.course;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lehrcase.core.table.PlainText;
import org.lehrcase.core.table.Problem;

/**
 * The chapters of a video: WebVTT, or a plain list such as {@code 12:40 second wash [p3] [template
 * 4]}.
 *
 * <p>Marks in brackets say what opens beside the picture: {@code [p3]} or {@code [page 3]}, {@code
 * [template 4]}, {@code [materials]}, {@code [firing]}, {@code [image name]}; other brackets stay
 * in the text. Lines that start with {@code #} are remarks.
 *
 * @param marks in order of time
 * @param problems what is wrong or doubtful, by line
 */
public record Chapters(List<ChapterMark> marks, List<Problem> problems) {

  /** What of one line is looked at; no chapter needs more, and matching stays short. */
  private static final int MAX_LINE = 500;

  private static final Pattern LINE = Pattern.compile("(\\d[\\d:.,]*)[\\s\u2013\u2014-]+(\\S.*)");
  private static final Pattern HINT =
      Pattern.compile(
          "\\[\\s*(?:(p|page)\\s*(\\d{1,4})|(template|materials|firing|image)(?:\\s+([^\\]]*))?)\\s*]",
          Pattern.CASE_INSENSITIVE);

  /** Copies the lists. */
  public Chapters {
    marks = List.copyOf(marks);
    problems = List.copyOf(problems);
  }

  /** Reads a chapter list; always gives what could be read. */
  public static Chapters parse(String text) {
    String bare = text.startsWith("\uFEFF") ? text.substring(1) : text;
    List<ChapterMark> marks = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    if (Captions.isWebVtt(bare)) {
      Captions captions = Captions.parse(bare);
      problems.addAll(captions.problems());
      captions.cues().forEach(c -> add(0, c.startMillis(), shortened(c.plain()), marks, problems));
    } else {
      readList(bare, marks, problems);
    }
    return new Chapters(marks, problems);
  }

  private static void readList(String text, List<ChapterMark> marks, List<Problem> problems) {
    int number = 0;
    for (String raw : PlainText.lines(text)) {
      number++;
      String line = shortened(raw.strip());
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      Matcher parts = LINE.matcher(line);
      var time = parts.matches() ? CueTime.ofList(parts.group(1)) : OptionalLong.empty();
      if (time.isEmpty()) {
        problems.add(
            new Problem(number, "a chapter starts with its time, for example: 12:40 second wash"));
      } else {
        add(number, time.getAsLong(), parts.group(2), marks, problems);
      }
    }
  }

  private static String shortened(String line) {
    return line.length() <= MAX_LINE ? line : line.substring(0, MAX_LINE);
  }

  private static void add(
      int line, long millis, String written, List<ChapterMark> marks, List<Problem> problems) {
    if (marks.size() == Lesson.MAX_MOMENTS || millis > Moment.MAX_MILLIS) {
      problems.add(new Problem(line, "too many chapters, or a chapter after 100 hours"));
      return;
    }
    if (!marks.isEmpty() && millis < marks.get(marks.size() - 1).atMillis()) {
      problems.add(new Problem(line, "the chapter lies before the one above it"));
    }
    String text = CourseText.tidied(HINT.matcher(written).replaceAll(" "));
    if (text.isEmpty()) {
      problems.add(new Problem(line, "the chapter has no words"));
    }
    marks.add(new ChapterMark(line, millis, text, hints(written)));
    marks.sort(Comparator.comparingLong(ChapterMark::atMillis));
  }

  private static List<MomentHint> hints(String written) {
    List<MomentHint> hints = new ArrayList<>();
    Matcher hint = HINT.matcher(written);
    while (hint.find()) {
      if (hint.group(1) != null) {
        hints.add(new MomentHint(MomentTarget.PAGE, hint.group(2).replaceFirst("^0+(?=.)", "")));
      } else {
        String label = Optional.ofNullable(hint.group(4)).orElse("").strip();
        hints.add(new MomentHint(target(hint.group(3)), label));
      }
    }
    return hints;
  }

  private static MomentTarget target(String word) {
    return MomentTarget.valueOf(word.toUpperCase(Locale.ROOT));
  }
}
