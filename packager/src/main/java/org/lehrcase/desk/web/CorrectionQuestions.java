package org.lehrcase.desk.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.Ask;
import org.lehrcase.bench.web.Json;
import org.lehrcase.bench.web.JsonApi;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.CorrectionNote;
import org.lehrcase.core.edition.CorrectionPin;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.correcting.CorrectionDesk;
import org.lehrcase.desk.correcting.CorrectionWish;
import org.lehrcase.desk.correcting.WrittenCorrections;
import org.lehrcase.desk.home.DeskKeys;

/** Corrections from the page: choose the place, look, sign, send, take back. */
final class CorrectionQuestions {
  private static final int MAX_PAGE = 9999;
  private static final int MAX_LESSON = 999;
  private static final int MARK_DIGITS = 8;

  private final OpenDesk desk;
  private final Clock clock;

  CorrectionQuestions(OpenDesk desk, Clock clock) {
    this.desk = desk;
    this.clock = clock;
  }

  void addTo(JsonApi api) {
    api.on("GET corrections", desk.keyed((ask, keys) -> lessons(ask.query("folder"), keys)));
    api.on("POST corrections/preview", desk.keyed(this::preview));
    api.on("POST corrections/sign", desk.keyed(this::sign));
    api.on("POST corrections/sent", desk.keyed(this::sent));
    api.on("POST corrections/take-back", desk.keyed(this::takeBack));
  }

  private CorrectionDesk writer(DeskKeys keys) {
    return new CorrectionDesk(desk.home(), keys, desk.random(), clock);
  }

  private WrittenCorrections written(DeskKeys keys) {
    return new WrittenCorrections(writer(keys), desk.book());
  }

  private JsonElement lessons(String folder, DeskKeys keys)
      throws Trouble, VaultException, IOException, RefusedException {
    OpenedEdition edition = writer(keys).opened(CoursePaths.folder(folder));
    JsonArray lessons = new JsonArray();
    for (Lesson lesson : edition.lessons()) {
      JsonObject one = new JsonObject();
      one.addProperty("number", lesson.number());
      one.addProperty("title", lesson.title());
      JsonArray papers = new JsonArray();
      for (Asset paper : CorrectionDesk.handouts(lesson)) {
        JsonObject entry = new JsonObject();
        entry.addProperty("id", paper.id().hex());
        entry.addProperty("name", paper.name());
        papers.add(entry);
      }
      one.add("papers", papers);
      lessons.add(one);
    }
    JsonArray corrections = new JsonArray();
    for (WrittenCorrections.Written one : written(keys).of(edition)) {
      corrections.add(shape(one, edition));
    }
    JsonObject answer = new JsonObject();
    answer.add("lessons", lessons);
    answer.add("corrections", corrections);
    return answer;
  }

  private static JsonObject shape(WrittenCorrections.Written written, OpenedEdition edition) {
    JsonObject one = shape(written.note(), edition);
    one.addProperty("name", written.correction().fileName());
    one.addProperty("sent", written.sent());
    one.addProperty("text", CorrectionDesk.text(written.correction()));
    one.addProperty("fileName", fileName(written.correction()));
    return one;
  }

  private static String fileName(Correction correction) {
    return "correction " + correction.fileName().substring(0, MARK_DIGITS) + ".txt";
  }

  private static JsonObject shape(CorrectionNote note, OpenedEdition edition) {
    JsonObject one = new JsonObject();
    Optional<Lesson> lesson = edition.lesson(note.lesson());
    one.addProperty("lesson", lesson.map(Lesson::number).orElse(0));
    one.addProperty("lessonTitle", lesson.map(Lesson::title).orElse(""));
    if (note.pin() == CorrectionPin.PAGE) {
      one.addProperty("page", note.position());
      one.addProperty("paper", note.asset().flatMap(edition::asset).map(Asset::name).orElse(""));
    } else {
      one.addProperty("atMillis", note.position());
    }
    one.addProperty("words", note.text());
    one.addProperty("day", note.day().toString());
    return one;
  }

  private JsonElement preview(Ask ask, DeskKeys keys)
      throws Trouble, VaultException, IOException, RefusedException {
    JsonObject body = ask.json();
    Path folder = CoursePaths.folder(Json.text(body, "folder"));
    CorrectionDesk writer = writer(keys);
    return shape(writer.preview(folder, wish(body)), writer.opened(folder));
  }

  private JsonElement sign(Ask ask, DeskKeys keys)
      throws Trouble, VaultException, IOException, RefusedException {
    JsonObject body = ask.json();
    Path folder = CoursePaths.folder(Json.text(body, "folder"));
    Correction correction = writer(keys).correct(folder, wish(body));
    JsonObject answer = new JsonObject();
    answer.addProperty("name", correction.fileName());
    answer.addProperty(
        "file",
        folder.resolve(EditionLayout.CORRECTIONS).resolve(correction.fileName()).toString());
    return answer;
  }

  private static CorrectionWish wish(JsonObject body) throws Trouble, RefusedException {
    int lesson = Answers.number(body, "lesson", 1, MAX_LESSON);
    return new CorrectionWish(lesson, place(body), Json.text(body, "text").strip());
  }

  private static CorrectionWish.Place place(JsonObject body) throws Trouble, RefusedException {
    if (!Json.text(body, "where").equals("page")) {
      return CorrectionDesk.momentOf(Json.text(body, "at").strip());
    }
    String paper = Answers.optional(body, "paper");
    Optional<AssetId> handout =
        paper.matches("[0-9a-f]{32}") ? Optional.of(AssetId.ofHex(paper)) : Optional.empty();
    return new CorrectionWish.Place.Page(Answers.number(body, "page", 1, MAX_PAGE), handout);
  }

  private JsonElement sent(Ask ask, DeskKeys keys)
      throws Trouble, VaultException, IOException, RefusedException {
    JsonObject body = ask.json();
    OpenedEdition edition = writer(keys).opened(CoursePaths.folder(Json.text(body, "folder")));
    written(keys).sent(edition.frontPage().edition(), name(body));
    return new JsonObject();
  }

  private JsonElement takeBack(Ask ask, DeskKeys keys)
      throws Trouble, VaultException, IOException, RefusedException {
    JsonObject body = ask.json();
    written(keys).takeBack(CoursePaths.folder(Json.text(body, "folder")), name(body));
    return new JsonObject();
  }

  private static String name(JsonObject body) throws Trouble {
    String name = Json.text(body, "name");
    if (!EditionLayout.PART_NAME.matcher(name).matches()) {
      throw new Trouble(TroubleCode.BAD_REQUEST, "This is no correction.", "Load the page again.");
    }
    return name;
  }
}
