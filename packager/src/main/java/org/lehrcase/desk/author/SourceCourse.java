package org.lehrcase.desk.author;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.lehrcase.core.course.AssetRole;

/**
 * A course folder, read.
 *
 * @param folder the real path of the folder
 * @param facts what the series says about itself
 * @param lessons in order of their numbers
 * @param findings what was wrong or doubtful already in reading; a course with an error among them
 *     must not be packed
 */
public record SourceCourse(
    Path folder, CourseFacts facts, List<SourceLesson> lessons, List<Finding> findings) {

  /** Copies the lists. */
  public SourceCourse {
    lessons = List.copyOf(lessons);
    findings = List.copyOf(findings);
  }

  /**
   * Returns the same course with other lessons.
   *
   * @param others its lessons, in order of their numbers
   */
  public SourceCourse with(List<SourceLesson> others) {
    return new SourceCourse(folder, facts, others, findings);
  }

  /** Returns the id of the series. */
  public String series() {
    return facts.series();
  }

  /** Returns the title of the series. */
  public String title() {
    return facts.words().title();
  }

  /** Returns a few sentences about the series, or empty. */
  public String description() {
    return facts.words().description();
  }

  /** Returns where to buy the course, or empty. */
  public String whereToBuy() {
    return facts.words().whereToBuy();
  }

  /** Returns who made the course, or empty. */
  public String teacher() {
    return facts.words().teacher();
  }

  /** Returns the roles whose files a student may save for printing. */
  public Set<AssetRole> printable() {
    return facts.printable();
  }
}
