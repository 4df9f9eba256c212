package org.lehrcase.bench.layers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.firing.JsonText;
import org.lehrcase.core.layers.cut.CutPiece;
import org.lehrcase.core.layers.cut.CutWay;
import org.lehrcase.core.layers.cut.StockSize;

/** Reads a request for a cut list. */
final class CutReader {
  private static final double UM_PER_MM = 1000;
  private static final double LONGEST_MM = 5000;
  private static final int MOST_KINDS = 200;
  private static final int MOST_STOCK = 20;
  private static final Set<String> KNOWN =
      Set.of(
          "name",
          "stock_mm",
          "kerf_mm",
          "turn",
          "pieces",
          "goal",
          "trim_mm",
          "grind_mm",
          "thickness_mm");
  private static final Set<String> PIECE =
      Set.of("name", "w_mm", "h_mm", "count", "value", "spare");
  private static final Set<String> STOCK = Set.of("name", "w_mm", "h_mm", "count", "price");

  private final Fields request;
  private final List<String> unknown;
  private final int trim;
  private final int grind;
  private boolean anyValue;
  private boolean anyFree;

  private CutReader(Fields request) throws FieldTrouble {
    this.request = request;
    this.unknown = new ArrayList<>(request.unknown(KNOWN));
    this.trim = um(request.number("trim_mm", 0, 0, 100));
    this.grind = um(request.number("grind_mm", 0, 0, 20));
  }

  /** Reads a request, refusing the first field that cannot be used. */
  static CutRequest read(String json) throws FieldTrouble {
    return new CutReader(new Fields(JsonText.object(json), "")).request();
  }

  private static int um(double mm) {
    return (int) Math.round(mm * UM_PER_MM);
  }

  private CutRequest request() throws FieldTrouble {
    List<CutPiece> pieces = pieces();
    List<StockSize> stock = stock();
    String usual = anyFree || anyValue ? "value" : "sheets";
    boolean forValue = request.word("goal", usual, List.of("value", "sheets")).equals("value");
    if (!forValue && anyFree) {
      throw new FieldTrouble("pieces", "count must be a number when all pieces must come out");
    }
    int kerf = um(request.number("kerf_mm", 0, 0, 20));
    return new CutRequest(
        pieces,
        stock,
        new CutWay(kerf, request.flag("turn", true)),
        forValue,
        trim,
        um(request.number("thickness_mm", 3, 0.1, 50)),
        unknown);
  }

  private List<CutPiece> pieces() throws FieldTrouble {
    Optional<List<Fields>> items = request.objects("pieces");
    if (items.isEmpty() || items.get().isEmpty() || items.get().size() > MOST_KINDS) {
      throw new FieldTrouble("pieces", "must name 1 to " + MOST_KINDS + " sizes");
    }
    boolean one = items.get().size() == 1;
    List<CutPiece> pieces = new ArrayList<>();
    for (Fields item : items.get()) {
      unknown.addAll(item.unknown(PIECE));
      try {
        pieces.add(piece(item, one, pieces.size() + 1));
      } catch (IllegalArgumentException e) {
        throw FieldTrouble.of(item.path(""), e);
      }
    }
    return pieces;
  }

  /** Without a value, pieces of one size count, and those of several sizes by their area. */
  private CutPiece piece(Fields item, boolean one, int number) throws FieldTrouble {
    double w = side(item, "w_mm");
    double h = side(item, "h_mm");
    int count = CutPiece.AS_MANY_AS_FIT;
    if (item.has("count")) {
      double spare = item.number("spare", 0, 0, 100);
      count = SceneReader.whole(item, "count", CutPiece.MOST) + (int) spare;
    } else {
      anyFree = true;
    }
    anyValue |= item.has("value");
    double value = item.number("value", one ? 1 : w * h);
    String name = item.text("name").orElse("piece " + number);
    return new CutPiece(name, um(w) + 2 * grind, um(h) + 2 * grind, count, value);
  }

  private static double side(Fields item, String name) throws FieldTrouble {
    if (!item.has(name)) {
      throw new FieldTrouble(item.path(name), "is missing");
    }
    return item.number(name, 0, 0.001, LONGEST_MM);
  }

  /** One sheet as two numbers, several as pairs, or objects with count and price. */
  private List<StockSize> stock() throws FieldTrouble {
    List<StockSize> stock = new ArrayList<>();
    try {
      if (request.isListOf("stock_mm", true)) {
        for (Fields item : request.objects("stock_mm").orElse(List.of())) {
          unknown.addAll(item.unknown(STOCK));
          int count = item.has("count") ? SceneReader.whole(item, "count", 1000) : StockSize.ANY;
          stock.add(size(side(item, "w_mm"), side(item, "h_mm"), count, item.number("price", 1)));
        }
      } else if (request.isListOf("stock_mm", false)) {
        for (double[] pair : request.pairs("stock_mm")) {
          stock.add(size(pair[0], pair[1], StockSize.ANY, 1));
        }
      } else {
        List<Double> two = request.numbers("stock_mm");
        if (two.size() != 2) {
          throw new FieldTrouble("stock_mm", "must be [width, height], or a list of these");
        }
        stock.add(size(two.get(0), two.get(1), StockSize.ANY, 1));
      }
    } catch (IllegalArgumentException e) {
      throw new FieldTrouble("stock_mm", String.valueOf(e.getMessage()));
    }
    if (stock.isEmpty() || stock.size() > MOST_STOCK) {
      throw new FieldTrouble("stock_mm", "must name 1 to " + MOST_STOCK + " kinds of sheet");
    }
    return stock;
  }

  private StockSize size(double w, double h, int count, double price) throws FieldTrouble {
    if (!(w <= LONGEST_MM && h <= LONGEST_MM && um(w) > 2 * trim && um(h) > 2 * trim)) {
      throw new FieldTrouble("stock_mm", "must be larger than its trim and at most 5000 each way");
    }
    return new StockSize(um(w) - 2 * trim, um(h) - 2 * trim, count, price);
  }
}
