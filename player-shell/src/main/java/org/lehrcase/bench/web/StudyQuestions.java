package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.lehrcase.bench.courses.FrameLength;
import org.lehrcase.bench.courses.Prose;
import org.lehrcase.bench.courses.StudyLesson;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.store.PositionTable.Position;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/** What a lesson's page asks: the lesson, a Markdown handout, the position, the settings. */
final class StudyQuestions {
  private static final Pattern SETTING = Pattern.compile("[a-zA-Z]{1,40}");
  private static final int MAX_VALUE_CHARS = 200;

  private final Bench bench;
  private final FilmAhead ahead;

  StudyQuestions(Bench bench) {
    this.bench = bench;
    this.ahead = new FilmAhead(bench.courses());
  }

  void addTo(JsonApi api) {
    api.on("GET lesson", this::lesson);
    api.on("GET markdown", this::markdown);
    api.on("GET frame", this::frame);
    api.on("PUT position", this::keepPosition);
    api.on("GET settings", ask -> settings());
    api.on("PUT settings", this::keepSettings);
  }

  private JsonElement lesson(Ask ask) throws Trouble, VaultException, IOException {
    LessonId id = LessonId.ofHex(hex(ask.query("l"), LessonId.BYTES));
    EditionId edition = edition(ask.query("e"));
    StudyLesson lesson = bench.courses().lesson(edition, id);
    lesson
        .lesson()
        .assets(AssetRole.VIDEO)
        .filter(lesson.edition()::isHere)
        .findFirst()
        .ifPresent(film -> ahead.open(edition, film.id()));
    JsonObject answer = new LessonAnswer(lesson).answer();
    JsonObject position = new JsonObject();
    position.addProperty(
        "seconds", bench.store().positions().of(id).map(Position::seconds).orElse(0.0));
    answer.add("position", position);
    answer.add("settings", settings());
    return answer;
  }

  /** How long one picture of a film stands; the page asks while the film loads. */
  private JsonElement frame(Ask ask) throws Trouble, VaultException, IOException {
    AssetId id = AssetId.ofHex(hex(ask.query("a"), AssetId.BYTES));
    OptionalDouble seconds =
        FrameLength.seconds(bench.courses().file(edition(ask.query("e")), id).clear());
    JsonObject answer = new JsonObject();
    seconds.ifPresent(s -> answer.addProperty("seconds", s));
    return answer;
  }

  private JsonElement markdown(Ask ask) throws Trouble, VaultException, IOException {
    OpenedEdition edition = bench.courses().open(edition(ask.query("e")));
    AssetId id = AssetId.ofHex(hex(ask.query("a"), AssetId.BYTES));
    Asset asset =
        edition
            .asset(id)
            .filter(a -> a.mediaType().equals("text/markdown"))
            .orElseThrow(
                () ->
                    new Trouble(
                        TroubleCode.NOT_FOUND, "There is no such text.", "Go to My courses."));
    JsonObject answer = new JsonObject();
    answer.addProperty("html", Prose.html(edition.read(asset, Prose.MAX_BYTES)));
    return answer;
  }

  private JsonElement keepPosition(Ask ask) throws Trouble, IOException {
    JsonObject body = ask.json();
    bench
        .store()
        .positions()
        .keep(
            new Position(
                edition(Json.text(body, "edition")),
                LessonId.ofHex(hex(Json.text(body, "lesson"), LessonId.BYTES)),
                Json.number(body, "seconds")));
    return new JsonObject();
  }

  /** Values are kept as text; numbers and switches come back as what they were. */
  private JsonObject settings() throws IOException {
    JsonObject settings = new JsonObject();
    for (Map.Entry<String, String> entry : bench.store().settings().all().entrySet()) {
      settings.add(entry.getKey(), value(entry.getValue()));
    }
    return settings;
  }

  private static JsonPrimitive value(String text) {
    if (text.equals("true") || text.equals("false")) {
      return new JsonPrimitive(Boolean.parseBoolean(text));
    }
    return text.matches("-?\\d{1,9}(\\.\\d{1,9})?")
        ? new JsonPrimitive(Double.valueOf(text))
        : new JsonPrimitive(text);
  }

  private JsonElement keepSettings(Ask ask) throws Trouble, IOException {
    Map<String, String> changed = new HashMap<>();
    for (Map.Entry<String, JsonElement> entry : ask.json().entrySet()) {
      JsonElement value = entry.getValue();
      if (!SETTING.matcher(entry.getKey()).matches()
          || !value.isJsonPrimitive()
          || value.getAsString().length() > MAX_VALUE_CHARS) {
        throw new Trouble(TroubleCode.BAD_REQUEST, "This is no setting.", "Load the page again.");
      }
      changed.put(entry.getKey(), value.getAsString());
    }
    bench.store().settings().keep(changed);
    return settings();
  }

  static EditionId edition(String hex) throws Trouble {
    return EditionId.ofHex(hex(hex, EditionId.BYTES));
  }

  static String hex(String text, int bytes) throws Trouble {
    if (!MediaHandler.isHex(text, bytes)) {
      throw new Trouble(TroubleCode.BAD_REQUEST, "This is no id.", "Go to My courses.");
    }
    return text;
  }
}
