package org.lehrcase.desk.find;

import java.util.List;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.desk.author.SourceAsset;

/**
 * A lesson as it is packed, with the files that it was packed from.
 *
 * @param lesson the lesson
 * @param files its files
 */
public record PackedLesson(Lesson lesson, List<PackedFile> files) {
  /** Copies the list. */
  public PackedLesson {
    files = List.copyOf(files);
  }

  /**
   * A file as it is packed.
   *
   * @param asset what the contents say of it
   * @param source the file of the course folder
   */
  public record PackedFile(Asset asset, SourceAsset source) {}
}
