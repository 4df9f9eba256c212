package org.lehrcase.desk.author;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.course.Rendition;

/** Looks at everything in a course folder the way a student's laptop will, before it is packed. */
public final class CourseCheck {
  /** An edition stays below this many files, so that slow sticks and old systems bear it. */
  static final int MAX_EDITION_FILES = 2000;

  private static final long PART_BYTES = 1L << 30;

  private final SourceCourse course;
  private final List<Finding> findings;

  private CourseCheck(SourceCourse course) {
    this.course = course;
    this.findings = new ArrayList<>(course.findings());
  }

  /**
   * Reads and checks a course folder. Nothing is written.
   *
   * @param folder the folder of one series
   * @return everything wrong or doubtful, and how large the course is
   * @throws IOException if the folder is not there, is no folder or cannot be listed
   */
  public static CourseReport run(Path folder) throws IOException {
    return of(CourseFolder.read(folder));
  }

  /** Checks a course that has been read already. */
  public static CourseReport of(SourceCourse course) {
    return new CourseCheck(course).check();
  }

  /**
   * Checks one film as every film of a course is checked.
   *
   * @param film a film that is to be packed
   * @return what is wrong or doubtful, and notes
   */
  public static List<Finding> film(SourceAsset film) {
    var findings = new ArrayList<Finding>();
    new FilmCheck(film, findings).run();
    return findings;
  }

  private CourseReport check() {
    var films = new ArrayList<Film>();
    var bytes = 0L;
    var files = 4L;
    for (var lesson : course.lessons()) {
      films.addAll(new LessonCheck(lesson, findings).run());
      for (var asset : lesson.assets()) {
        var size = sizeOf(asset);
        bytes += size;
        files += 2 * (1 + size / PART_BYTES);
      }
    }
    reportFileCount(files);
    new HeavyFilms(films, bytes, findings).report();
    var millis =
        films.stream()
            .filter(f -> f.asset().rendition() != Rendition.LIGHT)
            .mapToLong(f -> f.info().durationMillis())
            .sum();
    return new CourseReport(course, findings, new CourseReport.Volume(bytes, millis));
  }

  private long sizeOf(SourceAsset asset) {
    try {
      return Files.size(asset.file());
    } catch (IOException e) {
      findings.add(BoundedText.unreadable(asset.place(), e));
      return 0;
    }
  }

  private void reportFileCount(long files) {
    if (files >= MAX_EDITION_FILES) {
      findings.add(
          Finding.error(
              "",
              "the edition would have about " + files + " files, more than " + MAX_EDITION_FILES,
              "join small papers into one PDF, or make two series"));
    }
  }
}
