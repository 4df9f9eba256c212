package org.lehrcase.bench.layers;

import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.course.AmountPer;
import org.lehrcase.core.course.MaterialsRow;
import org.lehrcase.core.layers.supplies.PieceFacts;
import org.lehrcase.core.layers.supplies.ShoppingList;

/** The lesson's list for the student's own piece. */
public final class SuppliesService {
  private static final double DEAREST = 1e9;

  private SuppliesService() {}

  /**
   * Answers a request with {@code pieces, sheets, sheet_mm, firings, rows[]}.
   *
   * @throws FieldTrouble naming the first field that cannot be used
   */
  public static JsonObject answer(JsonObject json) throws FieldTrouble {
    var request = new Fields(json, "");
    List<MaterialsRow> rows = new ArrayList<>();
    Map<String, ShoppingList.Own> own = new HashMap<>();
    for (Fields item : request.objects("rows").orElse(List.of())) {
      MaterialsRow row = row(item);
      rows.add(row);
      own.put(ShoppingList.key(row), own(item));
    }
    PieceFacts facts = facts(request);
    return written(ShoppingList.of(rows, facts, own), facts.pieces());
  }

  private static PieceFacts facts(Fields request) throws FieldTrouble {
    double[] size = PieceRequest.two(request, "sheet_mm", new double[2]);
    try {
      return new PieceFacts(
          (int) request.number("pieces", 1, 1, 1000),
          SceneReader.whole(request, "sheets", 200),
          size[0],
          size[1],
          (int) request.number("firings", 1, 0, 10_000));
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of("", e);
    }
  }

  private static MaterialsRow row(Fields item) throws FieldTrouble {
    OptionalDouble amount = item.number("amount");
    if (amount.isPresent() && !(amount.getAsDouble() > 0 && amount.getAsDouble() <= DEAREST)) {
      throw new FieldTrouble(item.path("amount"), "must be above 0");
    }
    return new MaterialsRow(
        item.text("item").orElse(""),
        amount.isPresent()
            ? Optional.of(BigDecimal.valueOf(amount.getAsDouble()))
            : Optional.empty(),
        item.text("unit").orElse(""),
        AmountPer.ofWord(item.text("per").orElse("")).orElse(AmountPer.PIECE),
        item.text("itemNo").orElse(""),
        item.text("where").orElse(""),
        "");
  }

  private static ShoppingList.Own own(Fields item) throws FieldTrouble {
    double atHand = item.number("at_hand", 0, 0, DEAREST);
    double pack = item.number("pack", 0, 0, DEAREST);
    Optional<BigDecimal> price =
        item.has("price")
            ? Optional.of(BigDecimal.valueOf(item.number("price", 0, 0, DEAREST)))
            : Optional.empty();
    return new ShoppingList.Own(
        BigDecimal.valueOf(atHand),
        pack > 0 ? Optional.of(BigDecimal.valueOf(pack)) : Optional.empty(),
        price);
  }

  private static JsonObject written(ShoppingList list, int pieces) {
    var lines = new JsonArray();
    for (ShoppingList.Line line : list.lines()) {
      var one = new JsonObject();
      one.addProperty("item", line.row().item());
      one.addProperty("unit", line.row().unit());
      one.addProperty("itemNo", line.row().itemNo());
      one.addProperty("where", line.row().where());
      add(one, "needed", line.needed());
      add(one, "to_buy", line.toBuy());
      add(one, "cost", line.cost());
      lines.add(one);
    }
    var json = new JsonObject();
    json.add("lines", lines);
    json.addProperty("pieces", pieces);
    json.addProperty("cost", list.cost());
    BigDecimal each = list.cost().divide(BigDecimal.valueOf(pieces), 2, RoundingMode.HALF_UP);
    json.addProperty("cost_per_piece", each);
    var unpriced = new JsonArray();
    list.unpriced().forEach(unpriced::add);
    json.add("unpriced", unpriced);
    json.addProperty("text", list.text());
    return json;
  }

  private static void add(JsonObject to, String name, Optional<BigDecimal> number) {
    to.add(name, JsonNull.INSTANCE);
    number.ifPresent(n -> to.addProperty(name, new BigDecimal(n.toPlainString())));
  }
}
