package org.lehrcase.bench.layers;

import com.google.gson.JsonObject;
import java.util.List;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.core.layers.cut.CutPlan;
import org.lehrcase.core.layers.cut.StockPlanner;
import org.lehrcase.core.layers.cut.StockSize;
import org.lehrcase.core.layers.cut.ValuePlanner;

/** Makes cut lists. */
public final class CutService {
  private CutService() {}

  /**
   * An answer.
   *
   * @param json what to show
   * @param possible whether what was asked for comes out
   */
  public record Answer(JsonObject json, boolean possible) {}

  /**
   * Answers a request.
   *
   * @param json the request as text
   * @throws FieldTrouble naming the first field that cannot be used
   */
  public static Answer answer(String json) throws FieldTrouble {
    CutRequest request = CutReader.read(json);
    try {
      if (request.forValue()) {
        return mostValuable(request);
      }
      CutPlan plan = new StockPlanner(request.pieces(), request.stock(), request.way()).plan();
      return new Answer(new CutAnswer(request, request.stock(), plan).json(), true);
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of("", e);
    }
  }

  /** One sheet, of the kind that gives most. */
  private static Answer mostValuable(CutRequest request) {
    StockSize chosen = request.stock().get(0);
    CutPlan best = plan(request, chosen);
    for (StockSize size : request.stock().subList(1, request.stock().size())) {
      CutPlan plan = plan(request, size);
      if (plan.value() > best.value()) {
        best = plan;
        chosen = size;
      }
    }
    return new Answer(
        new CutAnswer(request, List.of(chosen), best).json(), !best.sheets().isEmpty());
  }

  private static CutPlan plan(CutRequest request, StockSize size) {
    return new ValuePlanner(request.pieces(), size, request.way()).plan();
  }
}
