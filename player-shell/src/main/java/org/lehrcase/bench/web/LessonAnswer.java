package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.bench.courses.StudyLesson;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.Moment;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.OpenedEdition;

/** Answers what the page of one lesson shows. */
final class LessonAnswer {
  private final OpenedEdition edition;
  private final Lesson lesson;
  private final StudyLesson study;
  private final String prefix;

  LessonAnswer(StudyLesson study) {
    this.study = study;
    this.edition = study.edition();
    this.lesson = study.lesson();
    this.prefix = "media/" + edition.frontPage().edition() + "/";
  }

  JsonObject answer() throws VaultException, IOException {
    JsonObject answer = new JsonObject();
    answer.addProperty("edition", edition.frontPage().edition().hex());
    answer.addProperty("courseTitle", edition.frontPage().title().title());
    answer.addProperty("seriesTitle", edition.frontPage().title().title());
    answer.add("lesson", about(lesson));
    int at = edition.lessons().indexOf(lesson);
    answer.add("previous", neighbour(at - 1));
    answer.add("next", neighbour(at + 1));
    answer.add("video", each(AssetRole.VIDEO, this::video));
    answer.add("captions", each(AssetRole.CAPTIONS, this::captions));
    answer.add("moments", moments());
    answer.add("papers", papers());
    PaperTables tables = new PaperTables(edition);
    answer.add("firing", tables.firing(lesson));
    answer.add("materials", tables.materials(lesson));
    answer.add("corrections", corrections());
    answer.add("damaged", damaged());
    answer.add("loop", JsonNull.INSTANCE);
    return answer;
  }

  private static JsonObject about(Lesson lesson) {
    JsonObject about = new JsonObject();
    about.addProperty("id", lesson.id().hex());
    about.addProperty("number", lesson.number());
    about.addProperty("title", lesson.title());
    about.addProperty("summary", lesson.summary());
    about.addProperty("block", lesson.block().orElse(null));
    return about;
  }

  private JsonElement neighbour(int index) {
    return index < 0 || index >= edition.lessons().size()
        ? JsonNull.INSTANCE
        : about(edition.lessons().get(index));
  }

  private interface AssetAnswer {
    JsonObject of(Asset asset);
  }

  private JsonArray each(AssetRole role, AssetAnswer answer) {
    JsonArray array = new JsonArray();
    lesson.assets(role).filter(edition::isHere).forEach(asset -> array.add(answer.of(asset)));
    return array;
  }

  private JsonObject video(Asset asset) {
    JsonObject video = new JsonObject();
    video.addProperty("asset", asset.id().hex());
    video.addProperty("rendition", asset.rendition().name().toLowerCase(Locale.ROOT));
    video.addProperty("url", prefix + asset.id());
    video.addProperty("mediaType", asset.mediaType());
    video.addProperty("bytes", asset.plainBytes());
    return video;
  }

  private JsonObject captions(Asset asset) {
    JsonObject captions = new JsonObject();
    String language = asset.language().isEmpty() ? "und" : asset.language();
    captions.addProperty("language", language);
    captions.addProperty("label", label(asset.language()));
    captions.addProperty("url", prefix + asset.id());
    return captions;
  }

  private static String label(String tag) {
    Locale language = Locale.forLanguageTag(tag);
    String name = language.getDisplayLanguage(language);
    return name.isEmpty() ? "Captions" : name;
  }

  private JsonArray moments() {
    JsonArray moments = new JsonArray();
    for (Moment moment : lesson.moments()) {
      JsonObject one = new JsonObject();
      one.addProperty("atMillis", moment.atMillis());
      one.addProperty("text", moment.text());
      one.addProperty("target", moment.target().name().toLowerCase(Locale.ROOT));
      one.addProperty("asset", moment.asset().map(a -> a.hex()).orElse(null));
      one.addProperty("page", moment.page() == 0 ? null : moment.page());
      moments.add(one);
    }
    return moments;
  }

  private JsonArray papers() {
    JsonArray papers = new JsonArray();
    for (Asset asset : lesson.assets()) {
      boolean paper =
          asset.role() != AssetRole.VIDEO
              && asset.role() != AssetRole.CAPTIONS
              && asset.role() != AssetRole.CHAPTERS;
      if (paper && edition.isHere(asset)) {
        papers.add(paper(asset));
      }
    }
    return papers;
  }

  private JsonObject paper(Asset asset) {
    JsonObject paper = new JsonObject();
    paper.addProperty("asset", asset.id().hex());
    paper.addProperty("role", asset.role().name());
    paper.addProperty("name", asset.name());
    paper.addProperty("title", asset.name().replaceFirst("(\\.[a-z]+)?\\.[A-Za-z0-9]+$", ""));
    paper.addProperty("mediaType", asset.mediaType());
    paper.addProperty("url", prefix + asset.id());
    paper.addProperty("mayPrint", study.mayPrint(asset));
    return paper;
  }

  private JsonArray corrections() {
    JsonArray corrections = new JsonArray();
    for (CorrectionNote note : study.corrections()) {
      corrections.add(correction(note, lesson));
    }
    return corrections;
  }

  /** Answers one correction; the start page lists it with its lesson. */
  static JsonObject correction(CorrectionNote note, Lesson lesson) {
    JsonObject one = new JsonObject();
    one.addProperty("lesson", lesson.id().hex());
    one.addProperty("number", lesson.number());
    one.addProperty("title", lesson.title());
    one.addProperty(note.pin() == CorrectionPin.PAGE ? "page" : "atMillis", note.position());
    note.asset().ifPresent(asset -> one.addProperty("asset", asset.hex()));
    one.addProperty("text", note.text());
    one.addProperty("day", note.day().toString());
    return one;
  }

  /** Damage of the films: whole segments, in bytes of the clear film. */
  private JsonArray damaged() {
    JsonArray damaged = new JsonArray();
    List<Asset> films = new ArrayList<>(lesson.assets(AssetRole.VIDEO).toList());
    for (Asset film : films) {
      for (long position : study.damage(film.id())) {
        JsonObject range = new JsonObject();
        range.addProperty("asset", film.id().hex());
        range.addProperty("fromByte", position);
        range.addProperty(
            "toByte", Math.min(film.plainBytes(), position + CourseFile.SEGMENT_BYTES));
        damaged.add(range);
      }
    }
    return damaged;
  }
}
