package org.lehrcase.desk.pack;

import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;

/**
 * What the teacher asks for.
 *
 * @param course the course folder
 * @param out the folder in which the edition's folder appears
 * @param changesOnly the folder in which a folder of the changes alone appears too
 * @param lightOnly the folder in which a folder that is complete with the light films appears too
 * @param newLessons numbers of lessons that are not to be recognised as earlier ones
 */
public record PackWish(
    Path course,
    Path out,
    Optional<Path> changesOnly,
    Optional<Path> lightOnly,
    Set<Integer> newLessons) {
  /** Copies the set. */
  public PackWish {
    newLessons = Set.copyOf(newLessons);
  }

  /** Asks for no folder of light films. */
  public PackWish(Path course, Path out, Optional<Path> changesOnly, Set<Integer> newLessons) {
    this(course, out, changesOnly, Optional.empty(), newLessons);
  }
}
