package org.lehrcase.desk.pack;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.desk.pack.KnownPart.KnownFile;
import org.lehrcase.desk.pack.PackPlan.Novelty;
import org.lehrcase.desk.pack.PackPlan.PlannedFile;
import org.lehrcase.desk.pack.PackPlan.PlannedLesson;

/** Says what is new in an edition, a line each. */
final class PackNews {
  private PackNews() {}

  static List<String> of(PackPlan plan, PackMemory before) {
    Set<AssetId> knownFiles = new HashSet<>();
    Set<LessonId> knownLessons = new HashSet<>();
    before
        .parts()
        .keySet()
        .forEach(
            file -> {
              knownFiles.add(file.asset());
              knownLessons.add(file.lesson());
            });
    List<String> news = new ArrayList<>();
    for (PlannedLesson lesson : plan.lessons()) {
      if (knownLessons.contains(lesson.entry().id())) {
        lesson.files().forEach(file -> add(news, file, knownFiles));
      } else {
        news.add("new lesson " + lesson.source().number() + ": " + lesson.source().title());
      }
    }
    news.addAll(removed(plan, before));
    if (news.isEmpty()) {
      news.add("changed: titles, moments or order only");
    }
    return news;
  }

  /** Says so if the edition before had light films and this one has none. */
  static Optional<String> lightLeftOut(PackPlan plan, PackMemory before) {
    boolean has =
        plan.lessons().stream()
            .flatMap(lesson -> lesson.files().stream())
            .anyMatch(file -> file.source().rendition() == Rendition.LIGHT);
    boolean had =
        before.parts().keySet().stream()
            .anyMatch(f -> f.name().endsWith(".light.mp4") && f.role() == AssetRole.VIDEO);
    return had && !has
        ? Optional.of(
            "The edition before has light films and this one has none; pack with --light to keep"
                + " them.")
        : Optional.empty();
  }

  private static void add(List<String> news, PlannedFile file, Set<AssetId> knownFiles) {
    if (!knownFiles.contains(file.id())) {
      news.add("new: " + file.source().place());
    } else if (file.novelty() != Novelty.SAME) {
      news.add("changed: " + file.source().place());
    }
  }

  private static List<String> removed(PackPlan plan, PackMemory before) {
    Set<AssetId> kept = new HashSet<>();
    plan.lessons().forEach(l -> l.files().forEach(f -> kept.add(f.id())));
    return before.parts().keySet().stream()
        .filter(file -> !kept.contains(file.asset()))
        .map(KnownFile::name)
        .map(name -> "removed: " + name)
        .toList();
  }
}
