package org.lehrcase.core.course;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;

/**
 * One lesson of an edition.
 *
 * @param id stays the same from edition to edition, whatever the number and the title become
 * @param number as people count, from 1 to {@value #MAX_NUMBER}
 * @param folder number of the folder that holds its parts, from 1 to {@value #MAX_NUMBER}
 * @param title one line
 * @param summary a few sentences, or empty
 * @param open whether it plays without a license
 * @param assets its files, in the order in which people should meet them
 * @param moments in order of time
 * @param block heading under which the lesson stands together with its neighbours, if any
 */
public record Lesson(
    LessonId id,
    int number,
    int folder,
    String title,
    String summary,
    boolean open,
    List<Asset> assets,
    List<Moment> moments,
    Optional<String> block) {

  /** Highest lesson number and highest folder number. */
  public static final int MAX_NUMBER = 999;

  /** Most files of one lesson. */
  public static final int MAX_ASSETS = 500;

  /** Most moments of one lesson. */
  public static final int MAX_MOMENTS = 2000;

  /**
   * Checks every field.
   *
   * @throws IllegalArgumentException if a text or a number breaks its rule, two assets share an id,
   *     or a moment names a file that the lesson does not have
   */
  public Lesson {
    CourseText.name(title);
    CourseText.paragraph(summary);
    block.ifPresent(CourseText::name);
    if (number < 1 || number > MAX_NUMBER || folder < 1 || folder > MAX_NUMBER) {
      throw new IllegalArgumentException("a lesson or folder number outside 1 to " + MAX_NUMBER);
    }
    if (assets.size() > MAX_ASSETS || moments.size() > MAX_MOMENTS) {
      throw new IllegalArgumentException("a lesson holds too many files or moments");
    }
    if (assets.stream().map(Asset::id).distinct().count() != assets.size()) {
      throw new IllegalArgumentException("two files of a lesson share an id");
    }
    var ids = assets.stream().map(Asset::id).toList();
    if (!moments.stream().flatMap(m -> m.asset().stream()).allMatch(ids::contains)) {
      throw new IllegalArgumentException("a moment names a file that the lesson does not have");
    }
    assets = List.copyOf(assets);
    moments = List.copyOf(moments);
  }

  /** Finds a file of this lesson by its id. */
  public Optional<Asset> asset(AssetId wanted) {
    return assets.stream().filter(a -> a.id().equals(wanted)).findFirst();
  }

  /** Returns the files of one role, in order. */
  public Stream<Asset> assets(AssetRole role) {
    return assets.stream().filter(a -> a.role() == role);
  }
}
