package org.lehrcase.desk.author;

import java.io.PrintWriter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.lehrcase.core.course.AssetRole;

/**
 * What a check of a course folder found.
 *
 * @param course the course as it was read
 * @param findings errors first, then doubts, then notes, each in the order of the folder
 * @param volume how much there is
 */
public record CourseReport(SourceCourse course, List<Finding> findings, Volume volume) {
  /**
   * How much a course is.
   *
   * @param bytes size of all files that would be packed
   * @param filmMillis length of all films that could be read, in milliseconds
   */
  public record Volume(long bytes, long filmMillis) {}

  /** Sorts and copies the list. */
  public CourseReport {
    findings = findings.stream().sorted(Comparator.comparing(Finding::severity)).toList();
  }

  /** Tells whether the course can be packed: no error was found. */
  public boolean packable() {
    return findings.stream().noneMatch(f -> f.severity() == Severity.ERROR);
  }

  /** Returns how many findings have a severity. */
  public long count(Severity severity) {
    return findings.stream().filter(f -> f.severity() == severity).count();
  }

  /** Writes the report for people: the course in a few lines, then every finding. */
  public void render(PrintWriter out) {
    out.printf(Locale.ROOT, "%s (%s)%n", course.title(), course.series());
    for (var lesson : course.lessons()) {
      out.printf(Locale.ROOT, "  %3d  %s%s%n", lesson.number(), lesson.title(), contents(lesson));
    }
    out.printf(
        Locale.ROOT,
        "%d lessons, %s of film, %s: %s%n%n",
        course.lessons().size(),
        Amounts.time(volume.filmMillis()),
        Amounts.bytes(volume.bytes()),
        StickSize.words(volume.bytes()));
    findings.forEach(f -> render(f, out));
    out.println(verdict());
    out.flush();
  }

  private static String contents(SourceLesson lesson) {
    var films = lesson.assets(AssetRole.VIDEO).count();
    return String.format(
        Locale.ROOT,
        "  (%d %s, %d other files, %d moments%s)",
        films,
        films == 1 ? "film" : "films",
        lesson.assets().size() - films,
        lesson.moments().size(),
        lesson.open() ? ", open without a license" : "");
  }

  private static void render(Finding finding, PrintWriter out) {
    var file = finding.file().isEmpty() ? "the course folder" : finding.file();
    var place = finding.place().isEmpty() ? "" : ", " + finding.place();
    out.printf(Locale.ROOT, "%s: %s%s%n", finding.severity().word(), printable(file), place);
    out.printf(Locale.ROOT, "    %s%n", printable(finding.what()));
    out.printf(Locale.ROOT, "    -> %s%n", printable(finding.whatToDo()));
  }

  /** Names come from strangers; nothing in them may steer a terminal. */
  private static String printable(String text) {
    return text.codePoints()
        .map(c -> isSteering(c) ? '?' : c)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  private static boolean isSteering(int c) {
    var type = Character.getType(c);
    return type == Character.CONTROL || type == Character.FORMAT || type == Character.SURROGATE;
  }

  private String verdict() {
    var doubts = count(Severity.DOUBT);
    if (packable()) {
      return doubts == 0
          ? "This course can be packed."
          : "This course can be packed; " + doubts + " doubtful.";
    }
    return String.format(
        Locale.ROOT,
        "This course cannot be packed yet: %d wrong, %d doubtful.",
        count(Severity.ERROR),
        doubts);
  }
}
