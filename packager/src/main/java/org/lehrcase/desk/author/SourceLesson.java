package org.lehrcase.desk.author;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lehrcase.core.course.AssetRole;

/**
 * One lesson folder, read.
 *
 * @param number as people count, from 1
 * @param folder name of the folder in the course folder
 * @param facts what title, summary and heading say
 * @param open whether it plays without a license
 * @param assets its files: by role, then by name, numbers in names compared as numbers
 * @param moments in order of time
 */
public record SourceLesson(
    int number,
    String folder,
    LessonFacts facts,
    boolean open,
    List<SourceAsset> assets,
    List<SourceMoment> moments) {

  /** Copies the lists. */
  public SourceLesson {
    assets = List.copyOf(assets);
    moments = List.copyOf(moments);
  }

  /**
   * Returns the same lesson with other files.
   *
   * @param others its files, in order
   */
  public SourceLesson with(List<SourceAsset> others) {
    return new SourceLesson(number, folder, facts, open, others, moments);
  }

  /** Returns the title, fit for the contents. */
  public String title() {
    return facts.title();
  }

  /** Returns a few sentences about the lesson, or empty. */
  public String summary() {
    return facts.summary();
  }

  /** Returns the heading under which the lesson stands together with its neighbours. */
  public Optional<String> block() {
    return facts.block();
  }

  /** Returns the files of one role, in order. */
  public Stream<SourceAsset> assets(AssetRole role) {
    return assets.stream().filter(a -> a.role() == role);
  }
}
