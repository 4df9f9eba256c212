package org.lehrcase.bench.find;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.bench.find.Passage.Spot;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.Moment;

/**
 * What the contents themselves say of a lesson: its title and summary, its moments, the names of
 * its papers. The desk puts it into the image; the bench makes do with it where there is no image.
 */
public final class LessonPassages {
  private LessonPassages() {}

  /**
   * Returns the passages of a lesson.
   *
   * @param lesson the lesson
   * @return title, summary, moments and papers
   */
  public static List<Passage> of(Lesson lesson) {
    List<Passage> passages = new ArrayList<>();
    Spot start = Spot.film(lesson.id(), 0);
    passages.add(new Passage(PassageKind.LESSON, start, lesson.title()));
    if (!lesson.summary().isBlank()) {
      passages.add(new Passage(PassageKind.LESSON, start, lesson.summary()));
    }
    for (Moment moment : lesson.moments()) {
      Spot spot = Spot.film(lesson.id(), moment.atMillis());
      passages.add(new Passage(PassageKind.MOMENT, spot, moment.text()));
    }
    lesson.assets().stream()
        .filter(LessonPassages::isPaper)
        .map(a -> new Passage(PassageKind.PAPER, Spot.paper(lesson.id(), a.id(), 0), name(a)))
        .forEach(passages::add);
    return passages;
  }

  private static boolean isPaper(Asset asset) {
    AssetRole role = asset.role();
    return role != AssetRole.VIDEO && role != AssetRole.CAPTIONS && role != AssetRole.CHAPTERS;
  }

  /**
   * Returns the name of a paper as people see it: without its ending.
   *
   * @param asset the paper
   * @return its name
   */
  public static String name(Asset asset) {
    return asset.name().replaceFirst("(\\.[a-z]+)?\\.[A-Za-z0-9]+$", "");
  }
}
