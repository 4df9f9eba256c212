package org.lehrcase.core.edition;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.lehrcase.core.course.Lesson;

/**
 * Everything that a front page says, signed or not yet.
 *
 * @param title what the edition is called
 * @param seal how to reach the contents
 * @param outline one entry per lesson, in the order of study
 * @param parts every sealed file but the contents, each address once
 * @param openLessons the lessons that play without a license, with their keys
 */
public record FrontPageFacts(
    EditionTitle title,
    ContentsSeal seal,
    List<OutlineEntry> outline,
    List<PartEntry> parts,
    List<Lesson> openLessons) {

  /**
   * Most parts of an edition; together with all other files fewer than 2,000 belong in a folder.
   */
  public static final int MAX_PARTS = 2000;

  /**
   * Copies the lists and checks that they fit together.
   *
   * @throws IllegalArgumentException if a list is too long, a folder or an address stands twice, an
   *     open lesson is not in the outline as open, or one of its files is not among the parts
   */
  public FrontPageFacts {
    outline = List.copyOf(outline);
    parts = List.copyOf(parts);
    openLessons = List.copyOf(openLessons);
    if (outline.size() > Lesson.MAX_NUMBER || parts.size() > MAX_PARTS) {
      throw new IllegalArgumentException("too many lessons or parts");
    }
    if (outline.stream().map(OutlineEntry::folder).distinct().count() != outline.size()) {
      throw new IllegalArgumentException("two lessons share a folder");
    }
    Set<Object> addresses = new HashSet<>();
    if (!parts.stream().map(PartEntry::address).allMatch(addresses::add)) {
      throw new IllegalArgumentException("a part stands twice");
    }
    for (Lesson lesson : openLessons) {
      requireOpen(outline, lesson);
    }
    if (!openLessons.stream()
        .flatMap(l -> l.assets().stream())
        .flatMap(a -> a.parts().stream())
        .allMatch(p -> addresses.contains(p.address()))) {
      throw new IllegalArgumentException("an open lesson names a part that is not listed");
    }
  }

  private static void requireOpen(List<OutlineEntry> outline, Lesson lesson) {
    boolean announced = outline.stream().anyMatch(o -> o.open() && o.folder() == lesson.folder());
    if (!lesson.open() || !announced) {
      throw new IllegalArgumentException("a lesson with keys is not announced as open");
    }
  }
}
