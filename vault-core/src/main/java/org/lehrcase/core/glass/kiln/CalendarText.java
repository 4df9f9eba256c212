package org.lehrcase.core.glass.kiln;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;

/** The times of a firing as a calendar file, RFC 5545; all times in UTC. */
public final class CalendarText {
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

  /** Octets of a line before it is folded. */
  private static final int LINE_OCTETS = 75;

  private CalendarText() {}

  /**
   * Writes a calendar.
   *
   * @param title name of the firing, shown before each entry
   * @param uid word that no other firing has; letters, digits and hyphens
   * @param written when the file is written
   * @param entries the times
   */
  public static String of(String title, String uid, Instant written, List<ClockEntry> entries) {
    var text = new StringBuilder();
    line(text, "BEGIN:VCALENDAR");
    line(text, "VERSION:2.0");
    line(text, "PRODID:-//Lehrcase//Firing//EN");
    int number = 0;
    for (ClockEntry entry : entries) {
      number++;
      line(text, "BEGIN:VEVENT");
      line(text, "UID:" + uid + "-" + number + "@lehrcase");
      line(text, "DTSTAMP:" + UTC.format(written));
      line(text, "DTSTART:" + UTC.format(entry.at()));
      line(text, "DTEND:" + UTC.format(entry.at().plusMinutes(15)));
      line(text, "SUMMARY:" + escaped(title + ": " + entry.what()));
      line(text, "DESCRIPTION:" + escaped(spread(entry)));
      alarm(text, entry);
      line(text, "END:VEVENT");
    }
    line(text, "END:VCALENDAR");
    return text.toString();
  }

  private static void alarm(StringBuilder text, ClockEntry entry) {
    if (entry.bePresent()) {
      line(text, "BEGIN:VALARM");
      line(text, "ACTION:DISPLAY");
      line(text, "DESCRIPTION:" + escaped(entry.what()));
      line(text, "TRIGGER:-PT30M");
      line(text, "END:VALARM");
    }
  }

  private static String spread(ClockEntry entry) {
    return "between " + clock(entry.earliest()) + " and " + clock(entry.latest());
  }

  private static String clock(ZonedDateTime at) {
    return CLOCK.format(at);
  }

  private static String escaped(String text) {
    return text.replace("\\", "\\\\")
        .replace(";", "\\;")
        .replace(",", "\\,")
        .replace("\r", "")
        .replace("\n", "\\n");
  }

  /** Folds after 75 octets, never inside a letter. */
  private static void line(StringBuilder text, String content) {
    int octets = 0;
    for (int letter : content.codePoints().toArray()) {
      int size = Character.toString(letter).getBytes(StandardCharsets.UTF_8).length;
      if (octets + size > LINE_OCTETS) {
        text.append("\r\n ");
        octets = 1;
      }
      text.appendCodePoint(letter);
      octets += size;
    }
    text.append("\r\n");
  }
}
