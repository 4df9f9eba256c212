package org.lehrcase.bench.layers;

import com.google.gson.JsonObject;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.core.layers.assign.NoPlan;
import org.lehrcase.core.layers.assign.OtherCount;
import org.lehrcase.core.layers.assign.SheetAnswer;
import org.lehrcase.core.layers.assign.SheetPlan;
import org.lehrcase.core.layers.assign.SheetPlanner;

/** Puts subjects on sheets. */
public final class LayersService {
  private LayersService() {}

  /**
   * An answer.
   *
   * @param json what to show
   * @param possible whether there is a plan
   */
  public record Answer(JsonObject json, boolean possible) {}

  /**
   * Answers a request.
   *
   * @param json the request as text
   * @throws FieldTrouble naming the first field that cannot be used
   */
  public static Answer answer(String json) throws FieldTrouble {
    SceneRequest request = SceneReader.read(json);
    var planner = new SheetPlanner(request.scene());
    SheetAnswer found = found(request, planner);
    var writer = new LayersAnswer(request, planner);
    return found instanceof SheetPlan plan
        ? new Answer(writer.planned(plan), true)
        : new Answer(writer.impossible((NoPlan) found), false);
  }

  private static SheetAnswer found(SceneRequest request, SheetPlanner planner) throws FieldTrouble {
    if (request.plannedOn().isEmpty()) {
      return planner.plan(request.sheets(), request.mode());
    }
    try {
      return new OtherCount(request.scene(), request.plannedOn()).to(request.sheets());
    } catch (IllegalArgumentException e) {
      throw new FieldTrouble("subjects", "planned_on: " + e.getMessage());
    }
  }
}
