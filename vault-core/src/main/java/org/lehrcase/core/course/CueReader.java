package org.lehrcase.core.course;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.lehrcase.core.table.PlainText;
import org.lehrcase.core.table.Problem;

/**
 * Collects the cues of one caption file after the parsing rules of <a
 * href="https://www.w3.org/TR/webvtt1/#parsing">WebVTT: The Web Video Text Tracks Format</a>,
 * section 6, and reports where it breaks the authoring rules of section 4.
 */
final class CueReader {

  private static final String ARROW = "-->";

  /** Section 6.3: the settings behind the end time are cut off; this program does not use them. */
  private static final Pattern TIMINGS =
      Pattern.compile("\\s*([\\d:.,]+)\\s*-->\\s*([\\d:.,]+)(?:\\s.*)?");

  /** What of one caption is kept: more than anyone can read, and matching stays short. */
  private static final int MAX_TEXT = 2000;

  private final List<String> lines;
  private final boolean webVtt;
  private final List<Cue> cues = new ArrayList<>();
  private final List<Problem> problems = new ArrayList<>();
  private int at;
  private long latestStart;

  CueReader(String text, boolean webVtt) {
    this.lines = PlainText.lines(text);
    this.webVtt = webVtt;
  }

  List<Cue> cues() {
    return cues;
  }

  List<Problem> problems() {
    return problems;
  }

  void read() {
    if (webVtt) {
      skipHeader();
    }
    while (at < lines.size() && cues.size() < Captions.MAX_CUES) {
      if (lines.get(at).isBlank()) {
        at++;
      } else {
        readBlock();
      }
    }
    if (at < lines.size()) {
      problems.add(new Problem(at + 1, "there are more than " + Captions.MAX_CUES + " captions"));
    }
  }

  /** Section 6.1, steps 8 to 13: what follows the signature up to an empty line is the header. */
  private void skipHeader() {
    at = 1;
    while (at < lines.size() && !lines.get(at).isEmpty() && !lines.get(at).contains(ARROW)) {
      at++;
    }
  }

  /** Section 6.1, "collect a WebVTT block": a line of times, perhaps with a name line before. */
  private void readBlock() {
    int first = at;
    if (!hasArrow(at) && hasArrow(at + 1)) {
      at++;
    }
    if (!hasArrow(at)) {
      skipBlock(first);
      return;
    }
    int timesLine = at++;
    String text = readText();
    Matcher times = TIMINGS.matcher(lines.get(timesLine));
    if (!times.matches()) {
      problems.add(new Problem(timesLine + 1, "the times cannot be read; " + example()));
      return;
    }
    OptionalLong start = time(times.group(1));
    OptionalLong end = time(times.group(2));
    if (start.isEmpty() || end.isEmpty()) {
      problems.add(new Problem(timesLine + 1, "the times cannot be read; " + example()));
      return;
    }
    add(timesLine + 1, new Cue(start.getAsLong(), end.getAsLong(), text));
  }

  private OptionalLong time(String written) {
    boolean comma = written.indexOf(',') >= 0;
    return webVtt && comma ? OptionalLong.empty() : CueTime.ofCue(written);
  }

  private String example() {
    return webVtt ? "write 00:01:02.500 --> 00:01:05.000" : "write 00:01:02,500 --> 00:01:05,000";
  }

  /** Section 4.1: the end lies behind the start; starts never go back. */
  private void add(int line, Cue cue) {
    if (cue.endMillis() <= cue.startMillis()) {
      problems.add(new Problem(line, "the caption ends before it starts; it is left out"));
      return;
    }
    if (cue.startMillis() < latestStart) {
      problems.add(new Problem(line, "the caption starts before the one above it"));
    }
    latestStart = Math.max(latestStart, cue.startMillis());
    cues.add(cue);
  }

  /** Cue text runs to an empty line, or to a line that can only be times. */
  private String readText() {
    List<String> text = new ArrayList<>();
    while (at < lines.size() && !lines.get(at).isEmpty() && !hasArrow(at)) {
      text.add(lines.get(at++));
    }
    if (hasArrow(at) && !webVtt && !text.isEmpty() && isCounter(text.get(text.size() - 1))) {
      text.remove(text.size() - 1);
    }
    String joined = String.join("\n", text).strip();
    if (joined.length() > MAX_TEXT) {
      problems.add(new Problem(at, "the caption is longer than " + MAX_TEXT + " characters; cut"));
      joined = joined.substring(0, MAX_TEXT);
    }
    return webVtt ? joined : CueMarkup.ofSubRip(joined);
  }

  private static boolean isCounter(String line) {
    return line.strip().matches("\\d{1,6}");
  }

  /** Notes, styles and regions are not captions; anything else without times is reported. */
  private void skipBlock(int first) {
    String opening = lines.get(first);
    boolean known = webVtt && opening.matches("(NOTE|STYLE|REGION)(\\s.*)?");
    while (at < lines.size() && !lines.get(at).isEmpty() && !hasArrow(at)) {
      at++;
    }
    if (!known) {
      problems.add(new Problem(first + 1, "text without times belongs to no caption"));
    }
  }

  private boolean hasArrow(int line) {
    return line < lines.size() && lines.get(line).contains(ARROW);
  }
}
