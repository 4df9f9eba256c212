package org.lehrcase.core.course;

import java.util.Locale;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Times as caption files and hand-written lists give them. */
final class CueTime {

  /**
   * WebVTT, section 4.1: two or more digits of hours (left out if 0), two of minutes and seconds up
   * to 59, three of thousandths behind a full stop. SubRip puts a comma there.
   */
  private static final Pattern CUE =
      Pattern.compile("(?:(\\d{2,4}):)?([0-5]\\d):([0-5]\\d)[.,](\\d{3})");

  private static final Pattern LIST =
      Pattern.compile("(?:(\\d{1,2}):)?(\\d{1,3}):([0-5]\\d)(?:[.,](\\d{1,3}))?");

  private CueTime() {}

  /** Milliseconds of a WebVTT or SubRip time; empty if it is none. */
  static OptionalLong ofCue(String text) {
    Matcher time = CUE.matcher(text);
    return time.matches() ? OptionalLong.of(millis(time)) : OptionalLong.empty();
  }

  /** Milliseconds of {@code m:ss}, {@code h:mm:ss}, either with a fraction; empty if it is none. */
  static OptionalLong ofList(String text) {
    Matcher time = LIST.matcher(text);
    if (!time.matches() || (time.group(1) != null && Integer.parseInt(time.group(2)) > 59)) {
      return OptionalLong.empty();
    }
    return OptionalLong.of(millis(time));
  }

  /** The WebVTT form, hours always written. */
  static String format(long millis) {
    return String.format(
        Locale.ROOT,
        "%02d:%02d:%02d.%03d",
        millis / 3_600_000,
        millis / 60_000 % 60,
        millis / 1000 % 60,
        millis % 1000);
  }

  private static long millis(Matcher time) {
    long hours = time.group(1) == null ? 0 : Long.parseLong(time.group(1));
    long seconds =
        (hours * 60 + Long.parseLong(time.group(2))) * 60 + Long.parseLong(time.group(3));
    String fraction = time.group(4) == null ? "" : time.group(4);
    return seconds * 1000 + Long.parseLong((fraction + "000").substring(0, 3));
  }
}
