package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.bench.courses.FilmLengths;
import org.lehrcase.bench.courses.Poster;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.store.EditionTable.KnownEdition;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.EditionCheck;
import org.lehrcase.core.edition.EditionTitle;
import org.lehrcase.core.edition.FolderReport;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.edition.OutlineEntry;
import org.lehrcase.core.edition.PartState;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Answers one course of the start page: what it is, whether it opens, what is here of it. */
final class CourseAnswer {
  private static final Logger LOG = LoggerFactory.getLogger(CourseAnswer.class);

  private final Bench bench;
  private final KnownEdition known;
  private final FilmLengths.Visit lengths;

  CourseAnswer(Bench bench, KnownEdition known, FilmLengths.Visit lengths) {
    this.bench = bench;
    this.lengths = lengths;
    this.known = known;
  }

  JsonObject answer(boolean shut) throws IOException {
    JsonObject course = new JsonObject();
    course.addProperty("edition", known.id().hex());
    course.addProperty("series", known.series());
    course.addProperty("number", known.number());
    course.addProperty("title", known.title());
    course.addProperty("whereIs", known.folder().toString());
    try {
      OpenedEdition edition = bench.courses().open(known.id());
      describe(course, edition, shut);
    } catch (Trouble | VaultException e) {
      LOG.info("could not open an edition id={} reason={}", known.id(), e.getMessage());
      away(course);
    }
    return course;
  }

  private static void away(JsonObject course) {
    course.addProperty("status", "notHere");
    course.addProperty("description", "");
    course.addProperty("teacher", "");
    course.addProperty("whereToBuy", "");
    course.addProperty("lessonsTotal", 0);
    course.addProperty("openLessons", 0);
    course.add("lessons", new JsonArray());
  }

  private void describe(JsonObject course, OpenedEdition edition, boolean shut) throws IOException {
    EditionTitle title = edition.frontPage().title();
    boolean open = edition.contents().isPresent();
    course.addProperty("description", title.description());
    course.addProperty("teacher", edition.frontPage().statement().terms().name());
    course.addProperty("whereToBuy", title.whereToBuy());
    course.addProperty("whereIs", edition.folder().roots().get(0).toString());
    course.addProperty("status", open ? "open" : shut ? "shut" : "locked");
    course.addProperty("lessonsTotal", edition.frontPage().facts().outline().size());
    course.addProperty("openLessons", edition.frontPage().facts().openLessons().size());
    Map<Integer, FolderReport> reports = new HashMap<>();
    EditionCheck.glance(edition.folder()).folders().forEach(r -> reports.put(r.folder(), r));
    Set<Integer> kept = bench.courses().kept().lessons(edition.frontPage());
    JsonArray lessons = new JsonArray();
    int number = 0;
    for (OutlineEntry entry : edition.frontPage().facts().outline()) {
      number++;
      FolderReport nothing = new FolderReport(entry.folder(), entry.title(), List.of());
      FolderReport report = reports.getOrDefault(entry.folder(), nothing);
      JsonObject lesson = lesson(entry, number, edition, report);
      lesson.addProperty("folder", entry.folder());
      lesson.addProperty("kept", kept.contains(entry.folder()));
      lessons.add(lesson);
    }
    course.add("lessons", lessons);
    course.add("corrections", corrections(edition));
  }

  private JsonArray corrections(OpenedEdition edition) throws IOException {
    JsonArray corrections = new JsonArray();
    try {
      for (CorrectionNote note : bench.courses().corrections().of(edition.folder())) {
        edition
            .lesson(note.lesson())
            .ifPresent(lesson -> corrections.add(LessonAnswer.correction(note, lesson)));
      }
    } catch (VaultException e) {
      LOG.info("could not read corrections id={} reason={}", known.id(), e.getMessage());
    }
    return corrections;
  }

  private JsonObject lesson(
      OutlineEntry entry, int number, OpenedEdition edition, FolderReport report)
      throws IOException {
    Optional<Lesson> readable =
        edition.lessons().stream().filter(l -> l.folder() == entry.folder()).findFirst();
    boolean here = report.state() == PartState.HERE;
    JsonObject lesson = new JsonObject();
    lesson.addProperty("id", readable.map(l -> l.id().hex()).orElse(""));
    lesson.addProperty("number", readable.map(Lesson::number).orElse(number));
    lesson.addProperty("title", entry.title());
    lesson.addProperty("summary", readable.map(Lesson::summary).orElse(""));
    lesson.addProperty("open", entry.open());
    lesson.addProperty("playable", readable.isPresent() && mainThingIsHere(edition, readable));
    lesson.addProperty("here", here);
    lesson.addProperty("parts", report.parts().size());
    lesson.addProperty("missing", report.count(PartState.NOT_HERE));
    long met = readable.map(this::damageMet).orElse(0L);
    lesson.addProperty("damaged", met + report.count(PartState.DAMAGED));
    lesson.addProperty("positionSeconds", position(readable));
    readable
        .map(l -> lengths.of(edition, l))
        .ifPresent(s -> s.ifPresent(v -> lesson.addProperty("durationSeconds", v)));
    readable
        .flatMap(l -> Poster.of(l, edition::isHere))
        .ifPresent(i -> lesson.addProperty("poster", "media/" + known.id() + "/" + i.id()));
    return lesson;
  }

  /** A lesson plays if one of its films is here; without a film, if any of its papers is. */
  private static boolean mainThingIsHere(OpenedEdition edition, Optional<Lesson> lesson) {
    boolean film = lesson.stream().anyMatch(l -> l.assets(AssetRole.VIDEO).findAny().isPresent());
    return lesson.stream()
        .flatMap(l -> l.assets().stream())
        .filter(a -> !film || a.role() == AssetRole.VIDEO)
        .anyMatch(edition::isHere);
  }

  private long damageMet(Lesson lesson) {
    return lesson.assets().stream()
        .map(Asset::id)
        .filter(id -> !bench.courses().damage().of(id).isEmpty())
        .count();
  }

  private double position(Optional<Lesson> lesson) throws IOException {
    return lesson.isEmpty()
        ? 0
        : bench.store().positions().of(lesson.get().id()).map(p -> p.seconds()).orElse(0.0);
  }
}
