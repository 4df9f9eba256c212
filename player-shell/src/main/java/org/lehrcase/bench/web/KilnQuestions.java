package org.lehrcase.bench.web;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.time.Clock;
import java.util.Arrays;
import org.lehrcase.bench.courses.StudyLesson;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.FiringService;
import org.lehrcase.bench.firing.OwnFigures;
import org.lehrcase.bench.firing.PhraseJson;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.kilns.FiringWarmup;
import org.lehrcase.bench.kilns.KilnFitting;
import org.lehrcase.bench.kilns.KilnSheet;
import org.lehrcase.bench.kilns.LessonBlock;
import org.lehrcase.bench.kilns.PowerCut;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.glass.care.Caution;
import org.lehrcase.core.glass.plan.CautionLevel;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LessonId;

/**
 * What the kiln sheet's page asks. A field that cannot be used is no failure of the program: the
 * answer is {@code {"problem": {"field", "message"}}}, and the page shows it at the field.
 */
final class KilnQuestions {
  private final Bench bench;
  private final Clock clock;

  KilnQuestions(Bench bench, Clock clock) {
    this.bench = bench;
    this.clock = clock;
  }

  void addTo(JsonApi api) {
    api.on("GET kiln", ask -> known());
    api.on("GET kiln/lesson", this::lesson);
    api.on("POST firing", ask -> inFields(() -> sheet(ask).json()));
    api.on("POST firing/prices", ask -> inFields(() -> prices(ask)));
    api.on("POST firing/inside", ask -> inFields(() -> sheet(ask).inside()));
    api.on("POST kiln/fit", ask -> inFields(() -> KilnFitting.answer(ask.json())));
    api.on("POST firing/power-cut", ask -> inFields(() -> PowerCut.answer(ask.json())));
  }

  /** Computes an answer that may name a field. */
  interface InFields {
    JsonElement answer() throws FieldTrouble, Trouble, IOException;
  }

  /** Turns a field that cannot be used into an answer. */
  static JsonElement inFields(InFields work) throws Trouble, IOException {
    try {
      return work.answer();
    } catch (FieldTrouble e) {
      var problem = new JsonObject();
      problem.addProperty("field", e.field());
      problem.addProperty("message", e.getMessage());
      problem.add("said", PhraseJson.of(e.what()));
      var answer = new JsonObject();
      answer.add("problem", problem);
      return answer;
    }
  }

  private KilnSheet sheet(Ask ask) throws FieldTrouble, Trouble, IOException {
    return KilnSheet.of(ask.json(), clock);
  }

  private JsonElement prices(Ask ask) throws FieldTrouble, Trouble, IOException {
    var answer = new JsonObject();
    answer.add("prices", sheet(ask).prices());
    return answer;
  }

  /** What there is to choose from; the first firing is warmed up meanwhile. */
  private JsonElement known() {
    FiringWarmup.start();
    var answer = new JsonObject();
    answer.addProperty("model", FiringService.MODEL);
    answer.addProperty("zone", clock.getZone().getId());
    answer.add("kinds", OwnFigures.kinds());
    var levels = new JsonArray();
    for (CautionLevel level : CautionLevel.values()) {
      var one = new JsonObject();
      one.addProperty("id", level.id());
      one.addProperty("words", level.words());
      levels.add(one);
    }
    answer.add("levels", levels);
    var cautions = new JsonObject();
    Arrays.stream(Caution.values()).forEach(c -> cautions.add(c.name(), PhraseJson.of(c.says())));
    answer.add("cautions", cautions);
    return answer;
  }

  private JsonElement lesson(Ask ask) throws Trouble, VaultException, IOException {
    LessonId id = LessonId.ofHex(StudyQuestions.hex(ask.query("l"), LessonId.BYTES));
    EditionId edition = StudyQuestions.edition(ask.query("e"));
    StudyLesson study = bench.courses().lesson(edition, id);
    var answer = new JsonObject();
    answer.addProperty("title", study.lesson().title());
    answer.addProperty("number", study.lesson().number());
    answer.addProperty("block", study.lesson().block().orElse(""));
    answer.add("stated", LessonBlock.json(study.lesson().block().orElse("")));
    answer.add("schedules", new PaperTables(study.edition()).firing(study.lesson()));
    return answer;
  }
}
