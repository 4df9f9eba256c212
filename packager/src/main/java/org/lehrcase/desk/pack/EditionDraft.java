package org.lehrcase.desk.pack;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.Moment;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.edition.OutlineEntry;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.desk.author.SourceCourse;
import org.lehrcase.desk.find.PackedLesson;
import org.lehrcase.desk.find.PackedLesson.PackedFile;
import org.lehrcase.desk.pack.PackPlan.PlannedFile;
import org.lehrcase.desk.pack.PackPlan.PlannedLesson;
import org.lehrcase.desk.pack.PackPlan.PlannedPart;

/** Turns a plan and its finished parts into the lessons, outline and part list of an edition. */
final class EditionDraft {
  private final PackPlan plan;
  private final Map<PlannedPart, PartRef> finished;
  private final List<Lesson> lessons = new ArrayList<>();
  private final List<OutlineEntry> outline = new ArrayList<>();
  private final List<PartEntry> parts = new ArrayList<>();

  EditionDraft(PackPlan plan, Map<PlannedPart, PartRef> finished) {
    this.plan = plan;
    this.finished = finished;
    plan.lessons().forEach(this::add);
  }

  Contents contents(EditionId edition, java.time.LocalDate day) {
    SourceCourse course = plan.course();
    return new Contents(edition, course.series(), course.title(), day, course.printable(), lessons);
  }

  List<OutlineEntry> outline() {
    return outline;
  }

  List<PartEntry> parts() {
    return parts;
  }

  /** Adds a part that no lesson names. */
  void share(PartEntry part) {
    parts.add(part);
  }

  /** Returns the lessons with the files that they are packed from. */
  List<PackedLesson> packedLessons() {
    List<PackedLesson> packed = new ArrayList<>();
    for (int i = 0; i < lessons.size(); i++) {
      List<PackedFile> files = new ArrayList<>();
      List<PlannedFile> planned = plan.lessons().get(i).files();
      for (int j = 0; j < planned.size(); j++) {
        files.add(new PackedFile(lessons.get(i).assets().get(j), planned.get(j).source()));
      }
      packed.add(new PackedLesson(lessons.get(i), files));
    }
    return packed;
  }

  List<Lesson> openLessons() {
    return lessons.stream().filter(Lesson::open).toList();
  }

  private void add(PlannedLesson planned) {
    List<Asset> assets = planned.files().stream().map(f -> asset(planned, f)).toList();
    List<Moment> moments =
        planned.source().moments().stream()
            .map(m -> m.toMoment(asset -> id(planned, asset)))
            .toList();
    lessons.add(
        new Lesson(
            planned.entry().id(),
            planned.source().number(),
            planned.entry().folder(),
            planned.source().title(),
            planned.source().summary(),
            planned.source().open(),
            assets,
            moments,
            planned.source().block()));
    outline.add(
        new OutlineEntry(
            planned.entry().folder(), planned.source().title(), planned.source().open()));
  }

  private Asset asset(PlannedLesson lesson, PlannedFile file) {
    List<PartRef> refs = new ArrayList<>();
    for (PlannedPart part : file.parts()) {
      PartRef ref =
          Optional.ofNullable(finished.get(part))
              .orElseThrow(() -> new IllegalStateException("a part is not finished"));
      refs.add(ref);
      parts.add(
          new PartEntry(
              lesson.entry().folder(),
              ref.address(),
              part.sealedBytes(),
              file.source().rendition()));
    }
    return new Asset(
        file.id(),
        file.source().role(),
        file.source().rendition(),
        file.source().name(),
        file.source().mediaType(),
        file.source().language(),
        file.plainBytes(),
        refs);
  }

  private static AssetId id(PlannedLesson lesson, org.lehrcase.desk.author.SourceAsset asset) {
    return lesson.files().stream()
        .filter(f -> f.source().equals(asset))
        .findFirst()
        .orElseThrow(() -> new IllegalStateException("a moment names a file of another lesson"))
        .id();
  }
}
