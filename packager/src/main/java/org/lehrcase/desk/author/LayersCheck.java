package org.lehrcase.desk.author;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.List;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.JsonText;
import org.lehrcase.bench.layers.LayersService;

/**
 * Reads a layer plan as the bench will, and says what a student could not do with it. The file is a
 * request of the {@code layers} command: JSON, which is YAML too.
 */
final class LayersCheck {
  private static final String GUIDE = "docs/sheets.md has every field";

  private final SourceAsset asset;
  private final List<Finding> findings;

  LayersCheck(SourceAsset asset, List<Finding> findings) {
    this.asset = asset;
    this.findings = findings;
  }

  void run() {
    var text = BoundedText.read(asset.file(), asset.place(), BoundedText.MAX_BYTES, findings);
    if (text.isEmpty()) {
      return;
    }
    try {
      LayersService.Answer answer = LayersService.answer(text.get());
      if (answer.possible()) {
        reportPlan(JsonText.object(text.get()), answer.json());
      } else {
        String why = answer.json().getAsJsonObject("impossible").get("message").getAsString();
        error(why, "change the sheets or the subjects; students would get no plan");
      }
    } catch (FieldTrouble trouble) {
      String field = trouble.field().isEmpty() ? "" : "'" + trouble.field() + "': ";
      error(field + trouble.getMessage(), GUIDE);
    }
  }

  private void error(String what, String whatToDo) {
    findings.add(Finding.error(asset.place(), what, whatToDo));
  }

  private void doubt(String what, String whatToDo) {
    findings.add(Finding.doubt(asset.place(), what, whatToDo));
  }

  private void reportPlan(JsonObject request, JsonObject answer) {
    int shapeless = 0;
    for (JsonElement subject : request.getAsJsonArray("subjects")) {
      JsonObject one = subject.getAsJsonObject();
      shapeless += one.has("box_mm") || one.has("outline_mm") ? 0 : 1;
    }
    if (shapeless > 0) {
      doubt(
          shapeless + " of the subjects have no shape; no template can be printed for them",
          "give each a box_mm or an outline_mm");
    }
    if (!request.has("piece") || !request.getAsJsonObject("piece").has("sheet_mm")) {
      doubt(
          "no sheet_mm: students cannot adapt the plan to their own format",
          "add \"piece\": { \"sheet_mm\": [width, height] }");
    }
    for (JsonElement move : answer.getAsJsonArray("moved")) {
      if (move.getAsJsonObject().get("noticeable").getAsBoolean()) {
        doubt(
            move.getAsJsonObject().get("message").getAsString(),
            "correct the size, the distance or who is in front");
      }
    }
    answer.getAsJsonArray("warnings").forEach(w -> doubt(w.getAsString(), GUIDE));
    String note =
        answer.getAsJsonArray("subjects").size()
            + " subjects on "
            + answer.get("sheets").getAsInt()
            + " sheets; sizes within a sheet are at most "
            + Math.round(answer.get("worst_size_percent").getAsDouble())
            + " % off";
    findings.add(Finding.note(asset.place(), note, "students see this plan beside the lesson"));
  }
}
