package org.lehrcase.desk.author;

import org.lehrcase.core.table.Problem;

/**
 * One thing that is wrong or doubtful in a course folder.
 *
 * @param severity how much it matters
 * @param file path inside the course folder with forward slashes, empty for the folder itself
 * @param place line, time or box inside the file; empty if the whole file is meant
 * @param what what was found
 * @param whatToDo what the teacher can do about it
 */
public record Finding(Severity severity, String file, String place, String what, String whatToDo) {

  static Finding error(String file, String what, String whatToDo) {
    return new Finding(Severity.ERROR, file, "", what, whatToDo);
  }

  static Finding doubt(String file, String what, String whatToDo) {
    return new Finding(Severity.DOUBT, file, "", what, whatToDo);
  }

  static Finding note(String file, String what, String whatToDo) {
    return new Finding(Severity.NOTE, file, "", what, whatToDo);
  }

  static Finding of(Severity severity, String file, Problem problem, String whatToDo) {
    return new Finding(severity, file, linePlace(problem.line()), problem.message(), whatToDo);
  }

  /** Returns the same finding at a place inside the file. */
  Finding at(String newPlace) {
    return new Finding(severity, file, newPlace, what, whatToDo);
  }

  static String linePlace(int line) {
    return line == 0 ? "" : "line " + line;
  }
}
