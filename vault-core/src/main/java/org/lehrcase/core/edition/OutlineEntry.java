package org.lehrcase.core.edition;

import org.lehrcase.core.course.CourseText;
import org.lehrcase.core.course.Lesson;

/**
 * What everybody may know of a lesson.
 *
 * @param folder number of the folder that holds its parts, from 1
 * @param title its title
 * @param open whether it plays without a license
 */
public record OutlineEntry(int folder, String title, boolean open) {

  /**
   * Checks every field.
   *
   * @throws IllegalArgumentException if the title is no name or the folder is not 1 to 999
   */
  public OutlineEntry {
    CourseText.name(title);
    if (folder < 1 || folder > Lesson.MAX_NUMBER) {
      throw new IllegalArgumentException("a folder outside 1 to " + Lesson.MAX_NUMBER);
    }
  }
}
