package org.lehrcase.bench.layers;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Locale;
import org.lehrcase.core.layers.cut.CutPlan;
import org.lehrcase.core.layers.cut.CutSheet;
import org.lehrcase.core.layers.cut.NarrowStrips;
import org.lehrcase.core.layers.cut.StockSize;

/** Writes a cut list. */
final class CutAnswer {
  private static final double UM_PER_MM = 1000;

  private final CutRequest request;
  private final List<StockSize> stock;
  private final CutPlan plan;
  private final JsonArray placed = new JsonArray();
  private final JsonArray scores = new JsonArray();
  private final JsonArray offCuts = new JsonArray();

  CutAnswer(CutRequest request, List<StockSize> stock, CutPlan plan) {
    this.request = request;
    this.stock = stock;
    this.plan = plan;
  }

  JsonObject json() {
    var json = new JsonObject();
    json.addProperty("goal", request.forValue() ? "value" : "sheets");
    json.addProperty("proven", plan.proven());
    json.addProperty("value", plan.value());
    json.addProperty("stock_sheets", plan.sheets().size());
    json.addProperty("price", plan.price());
    json.addProperty("bound", plan.bound());
    json.addProperty("message", words());
    var sheets = new JsonArray();
    for (int i = 0; i < plan.sheets().size(); i++) {
      sheets.add(sheet(i, plan.sheets().get(i)));
    }
    json.add("sheets", sheets);
    json.add("placed", placed);
    json.add("scores", scores);
    json.add("off_cuts", offCuts);
    json.add("not_placed", notPlaced());
    var warnings = new JsonArray();
    request.unknown().forEach(u -> warnings.add(u + " means nothing here and was passed over"));
    if (request.trimUm() > 0) {
      warnings.add(
          "take " + request.trimUm() / UM_PER_MM + " mm off every edge of the stock first");
    }
    json.add("warnings", warnings);
    return json;
  }

  private String words() {
    if (request.forValue()) {
      return plan.proven()
          ? "No better cut list exists."
          : String.format(Locale.ROOT, "The best may be worth up to %.6g.", plan.bound());
    }
    int count = plan.sheets().size();
    boolean onePrice = stock.stream().allMatch(s -> s.price() == stock.get(0).price());
    if (plan.proven()) {
      return count
          + (count == 1 ? " stock sheet; " : " stock sheets; ")
          + (onePrice ? "fewer is impossible." : "nothing cheaper is possible.");
    }
    return onePrice
        ? count
            + " stock sheets; at least "
            + Math.round(plan.bound() / stock.get(0).price())
            + " are needed."
        : String.format(
            Locale.ROOT, "Price %.2f; at least %.2f is needed.", plan.price(), plan.bound());
  }

  private JsonObject sheet(int at, CutSheet sheet) {
    StockSize size = stock.get(sheet.stock());
    int number = at + 1;
    for (CutSheet.Placed piece : sheet.placed()) {
      JsonObject one = rect(number, piece.at());
      one.addProperty("name", request.pieces().get(piece.piece()).name());
      one.addProperty("turned", piece.turned());
      placed.add(one);
    }
    List<Integer> narrow = NarrowStrips.of(sheet, request.way().kerfUm(), request.thicknessUm());
    for (int i = 0; i < sheet.scores().size(); i++) {
      scores.add(score(number, i + 1, sheet.scores().get(i), narrow.contains(i)));
    }
    sheet.offCuts().forEach(rest -> offCuts.add(rect(number, rest)));
    var json = new JsonObject();
    json.addProperty("stock_sheet", number);
    json.addProperty("w_mm", (size.widthUm() + 2 * request.trimUm()) / UM_PER_MM);
    json.addProperty("h_mm", (size.heightUm() + 2 * request.trimUm()) / UM_PER_MM);
    json.addProperty("pieces", sheet.placed().size());
    json.addProperty("scores", sheet.scores().size());
    sheet.largestOffCut().ifPresent(rest -> json.add("largest_off_cut", rect(number, rest)));
    return json;
  }

  private double mm(int um) {
    return (um + request.trimUm()) / UM_PER_MM;
  }

  private JsonObject rect(int sheet, CutSheet.Rect rect) {
    var one = new JsonObject();
    one.addProperty("stock_sheet", sheet);
    one.addProperty("x_mm", mm(rect.xUm()));
    one.addProperty("y_mm", mm(rect.yUm()));
    one.addProperty("w_mm", rect.widthUm() / UM_PER_MM);
    one.addProperty("h_mm", rect.heightUm() / UM_PER_MM);
    return one;
  }

  private JsonObject score(int sheet, int number, CutSheet.Score score, boolean narrow) {
    CutSheet.Rect part = score.part();
    var one = new JsonObject();
    one.addProperty("stock_sheet", sheet);
    one.addProperty("number", number);
    one.addProperty("direction", score.upright() ? "upright" : "level");
    one.addProperty("at_mm", mm(score.atUm()));
    var from = new JsonArray();
    var to = new JsonArray();
    from.add(score.upright() ? mm(score.atUm()) : mm(part.xUm()));
    from.add(score.upright() ? mm(part.yUm()) : mm(score.atUm()));
    to.add(score.upright() ? mm(score.atUm()) : mm(part.xUm() + part.widthUm()));
    to.add(score.upright() ? mm(part.yUm() + part.heightUm()) : mm(score.atUm()));
    one.add("from_mm", from);
    one.add("to_mm", to);
    one.addProperty("too_narrow_to_snap", narrow);
    return one;
  }

  private JsonArray notPlaced() {
    var list = new JsonArray();
    for (int i = 0; i < plan.left().size(); i++) {
      if (plan.left().get(i) > 0) {
        var one = new JsonObject();
        one.addProperty("name", request.pieces().get(i).name());
        one.addProperty("count", plan.left().get(i));
        list.add(one);
      }
    }
    return list;
  }
}
