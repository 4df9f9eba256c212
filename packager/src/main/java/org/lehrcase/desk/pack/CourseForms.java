package org.lehrcase.desk.pack;

import java.io.IOException;
import org.lehrcase.desk.author.SourceCourse;

/** Gives a course that was read and found packable further forms of its films. */
@FunctionalInterface
public interface CourseForms {
  /** Leaves the course as it lies in its folder. */
  CourseForms AS_IT_IS = course -> course;

  /**
   * Returns the course as it is to be packed.
   *
   * @param course the course as it was read
   * @return the same, or the same with more files
   * @throws PackException if a form cannot be made; nothing is packed then
   * @throws IOException if reading or writing fails; nothing is packed then
   */
  SourceCourse of(SourceCourse course) throws IOException, PackException;
}
