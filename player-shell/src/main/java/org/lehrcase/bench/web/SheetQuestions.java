package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import org.lehrcase.bench.layers.CutService;
import org.lehrcase.bench.layers.LayersService;
import org.lehrcase.bench.plans.PlanShape;
import org.lehrcase.bench.trouble.Trouble;

/**
 * What the page of the student's sheets asks: plans and cut lists. Nothing is stored; a field that
 * cannot be used is answered as {@code problem}.
 */
final class SheetQuestions {
  void addTo(JsonApi api) {
    api.on("POST sheets/plan", this::plan);
    api.on("POST sheets/cut", this::cut);
  }

  private JsonElement plan(Ask ask) throws Trouble, IOException {
    JsonObject plan = ask.json(PlanShape.MOST_BYTES);
    return KilnQuestions.inFields(
        () -> {
          JsonObject answer = LayersService.answer(plan.toString()).json();
          PlanShape.sharpness(plan).ifPresent(s -> answer.addProperty("picture_sharpness", s));
          return answer;
        });
  }

  private JsonElement cut(Ask ask) throws Trouble, IOException {
    String json = ask.json().toString();
    return KilnQuestions.inFields(() -> CutService.answer(json).json());
  }
}
