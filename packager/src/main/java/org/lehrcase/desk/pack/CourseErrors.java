package org.lehrcase.desk.pack;

import java.util.List;
import org.lehrcase.desk.author.CourseReport;
import org.lehrcase.desk.author.Finding;
import org.lehrcase.desk.author.Severity;

/** Says why a course is not packed. */
final class CourseErrors {
  private static final int SHOWN = 3;

  private CourseErrors() {}

  static PackException refusal(CourseReport report) {
    List<Finding> errors =
        report.findings().stream().filter(f -> f.severity() == Severity.ERROR).toList();
    StringBuilder message = new StringBuilder("The course cannot be packed yet:");
    for (Finding error : errors.subList(0, Math.min(SHOWN, errors.size()))) {
      String file = error.file().isEmpty() ? "the course folder" : error.file();
      message.append("\n  ").append(file).append(": ").append(error.what());
    }
    message
        .append("\n")
        .append(errors.size() > SHOWN ? "and " + (errors.size() - SHOWN) + " more. " : "")
        .append("Nothing was written; `check` lists everything, with what to do.");
    return new PackException(PackException.Reason.COURSE_HAS_ERRORS, message.toString());
  }
}
