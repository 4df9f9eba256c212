package org.lehrcase.bench.courses;

import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Lesson;

/** Chooses the picture that stands for a lesson on the start page. */
public final class Poster {
  private Poster() {}

  /**
   * Chooses among the lesson's pictures: one called {@code poster}, else one with the name of the
   * lesson's film, else the first.
   *
   * @param lesson the lesson
   * @param isHere whether a file is in this copy
   * @return the picture, empty if none is here
   */
  public static Optional<Asset> of(Lesson lesson, Predicate<Asset> isHere) {
    Set<String> films =
        lesson.assets(AssetRole.VIDEO).map(Poster::bareName).collect(Collectors.toSet());
    return lesson
        .assets(AssetRole.IMAGE)
        .filter(isHere)
        .min(Comparator.comparingInt(image -> rank(bareName(image), films)));
  }

  private static int rank(String name, Set<String> films) {
    if (name.equals("poster")) {
      return 0;
    }
    return films.contains(name) ? 1 : 2;
  }

  private static String bareName(Asset asset) {
    String name = asset.name().toLowerCase(Locale.ROOT);
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }
}
