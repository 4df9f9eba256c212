package org.lehrcase.bench.layers;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.lehrcase.core.layers.assign.Mode;
import org.lehrcase.core.layers.assign.NoPlan;
import org.lehrcase.core.layers.assign.Occlusion;
import org.lehrcase.core.layers.assign.Scene;
import org.lehrcase.core.layers.assign.SheetPlan;
import org.lehrcase.core.layers.assign.SheetPlanner;

/** Writes what was found about a scene. */
final class LayersAnswer {
  private static final int MOST_CHOICES = 12;
  private static final double PERCENT = 100;

  private final SceneRequest request;
  private final SheetPlanner planner;
  private final Scene scene;

  LayersAnswer(SceneRequest request, SheetPlanner planner) {
    this.request = request;
    this.planner = planner;
    this.scene = request.scene();
  }

  /** A plan: who lies where, how good it is, what each sheet needs. */
  JsonObject planned(SheetPlan plan) {
    JsonObject json = head(plan.sheets(), plan.mode());
    json.add("impossible", JsonNull.INSTANCE);
    json.addProperty("spread", plan.spread());
    json.addProperty("fit", plan.fit());
    json.addProperty("worst_size_percent", PERCENT * plan.worstSize());
    json.addProperty("proven", plan.proven());
    json.add("subjects", subjects(plan));
    json.add("moved", moves(plan));
    rest(json);
    json.add("choices", choices());
    SheetAnswers sheets = new SheetAnswers(request, planner, plan);
    json.add("sheet_list", sheets.sheets());
    request.piece().bed().ifPresent(bed -> json.add("block", sheets.block(bed)));
    json.add("warnings", warnings(plan));
    return json;
  }

  /** Why there is none, by name. */
  JsonObject impossible(NoPlan none) {
    JsonObject json = head(request.sheets(), request.mode());
    var why = new JsonObject();
    why.addProperty("reason", none.reason().name().toLowerCase(Locale.ROOT));
    why.add("needed", number(none.needed()));
    why.add("chain", texts(scene.names(none.chain())));
    why.add("pairs", pairs(none.pairs()));
    why.addProperty("message", none.words(scene));
    if (none.reason() == NoPlan.Reason.ORDER
        && planner.plan(request.sheets(), Mode.FREE) instanceof SheetPlan free
        && free.mode() == Mode.FREE) {
      why.add("free_plan", freePlan(free));
    }
    json.add("impossible", why);
    json.add("spread", JsonNull.INSTANCE);
    json.add("subjects", new JsonArray());
    rest(json);
    json.add("warnings", warnings());
    return json;
  }

  private static JsonObject head(int sheets, Mode mode) {
    var json = new JsonObject();
    json.addProperty("sheets", sheets);
    json.addProperty("mode", mode.name().toLowerCase(Locale.ROOT));
    return json;
  }

  private void rest(JsonObject json) {
    json.add("assumed_in_front", pairs(request.inFront().assumed()));
    var fewest = new JsonObject();
    fewest.add("ordered", number(planner.fewest(Mode.ORDERED)));
    fewest.add("free", number(planner.fewest(Mode.FREE)));
    json.add("fewest", fewest);
  }

  private static JsonElement number(OptionalInt number) {
    var one = new JsonArray();
    number.ifPresent(one::add);
    return one.isEmpty() ? JsonNull.INSTANCE : one.get(0);
  }

  private JsonArray subjects(SheetPlan plan) {
    var list = new JsonArray();
    List<int[]> ranges = planner.ranges(plan.sheets());
    for (int i = 0; i < scene.size(); i++) {
      var one = new JsonObject();
      one.addProperty("name", scene.subjects().get(i).name());
      one.addProperty("sheet", plan.sheetOf().get(i));
      one.addProperty("depth", scene.subjects().get(i).depth());
      var range = new JsonArray();
      for (int end : ranges.get(i)) {
        range.add(end);
      }
      one.add("may_be_on", range);
      list.add(one);
    }
    return list;
  }

  private JsonArray moves(SheetPlan plan) {
    var list = new JsonArray();
    for (SheetPlan.Move move : plan.moves()) {
      var one = new JsonObject();
      String name = scene.subjects().get(move.subject()).name();
      double percent = PERCENT * (move.sizeFactor() - 1);
      one.addProperty("name", name);
      one.addProperty("from", scene.subjects().get(move.subject()).depth());
      one.addProperty("to", move.to());
      one.addProperty("distance_percent", percent);
      one.addProperty("noticeable", move.isNoticeable());
      one.add("because", pair(move.because()));
      one.addProperty(
          "message",
          String.format(
              Locale.ROOT,
              "%s hides part of %s, whatever their sizes say: %s is taken to be %.0f %% %s.",
              scene.subjects().get(move.because().front()).name(),
              scene.subjects().get(move.because().back()).name(),
              name,
              Math.abs(percent),
              percent > 0 ? "farther away" : "nearer"));
      list.add(one);
    }
    return list;
  }

  private JsonArray choices() {
    var list = new JsonArray();
    for (SheetPlan plan : planner.choices(MOST_CHOICES)) {
      var one = new JsonObject();
      one.addProperty("sheets", plan.sheets());
      one.addProperty("spread", plan.spread());
      one.addProperty("fit", plan.fit());
      one.addProperty("worst_size_percent", PERCENT * plan.worstSize());
      list.add(one);
    }
    return list;
  }

  private JsonObject freePlan(SheetPlan free) {
    var json = new JsonObject();
    json.addProperty("spread", free.spread());
    json.add("subjects", subjects(free));
    var reversed = new JsonArray();
    for (int i = 0; i < scene.size(); i++) {
      for (int j = 0; j < scene.size(); j++) {
        boolean farther = scene.subjects().get(i).depth() > scene.subjects().get(j).depth();
        if (farther && free.sheetOf().get(i) < free.sheetOf().get(j)) {
          reversed.add(pair(new Occlusion(i, j)));
        }
      }
    }
    json.add("farther_in_front", reversed);
    return json;
  }

  private JsonArray warnings() {
    var list = new JsonArray();
    request.unknown().forEach(u -> list.add(u + " means nothing here and was passed over"));
    return list;
  }

  private JsonArray warnings(SheetPlan plan) {
    JsonArray list = warnings();
    if (plan.mode() != request.mode() && request.plannedOn().isEmpty()) {
      list.add("a free plan is only made for up to 16 subjects; this one keeps the order of depth");
    }
    for (int sheet = 1; sheet <= plan.sheets(); sheet++) {
      if (plan.on(sheet).isEmpty()) {
        list.add("sheet " + sheet + " stays clear: a spacer, or room for a wash");
      }
    }
    return list;
  }

  private JsonArray pairs(Collection<Occlusion> pairs) {
    var list = new JsonArray();
    pairs.forEach(p -> list.add(pair(p)));
    return list;
  }

  private JsonArray pair(Occlusion pair) {
    return texts(scene.names(List.of(pair.front(), pair.back())));
  }

  private static JsonArray texts(List<String> texts) {
    var list = new JsonArray();
    texts.forEach(list::add);
    return list;
  }
}
