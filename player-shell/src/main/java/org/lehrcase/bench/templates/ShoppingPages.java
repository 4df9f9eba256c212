package org.lehrcase.bench.templates;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.List;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.help.QrSquares;
import org.lehrcase.bench.layers.SuppliesService;

/** What to buy, with boxes to tick, what it costs, and the same for the phone. */
final class ShoppingPages {
  private static final double[] SHARES = {0.05, 0.37, 0.17, 0.17, 0.12, 0.12};
  private static final double CODE_MM = 52;

  private ShoppingPages() {}

  /**
   * Adds the list.
   *
   * @param request as {@code sheets/supplies} takes it
   * @throws FieldTrouble naming the field that cannot be used
   */
  static void add(JsonObject request, Pages pages) throws FieldTrouble, IOException {
    JsonObject answer = SuppliesService.answer(request);
    var text = new TextPages(pages, "Shopping list");
    int pieces = answer.get("pieces").getAsInt();
    text.paragraph(
        (pieces == 1 ? "For one piece" : "For a class of " + pieces + ", jars and dams shared")
            + ", less what is in the drawer. Prices are your own.");
    text.row(List.of("", "what", "needed", "to buy", "number", "cost"), SHARES);
    for (JsonElement element : answer.getAsJsonArray("lines")) {
      JsonObject line = element.getAsJsonObject();
      text.row(
          List.of(
              "\u25a1",
              line.get("item").getAsString() + where(line),
              amount(line, "needed"),
              amount(line, "to_buy"),
              line.get("itemNo").getAsString(),
              plain(line, "cost")),
          SHARES);
    }
    text.down(2);
    text.paragraph(cost(answer, pieces));
    codes(text, answer.get("text").getAsString());
  }

  private static String where(JsonObject line) {
    String where = line.get("where").getAsString();
    return where.isBlank() ? "" : " (" + where + ")";
  }

  private static String plain(JsonObject line, String name) {
    return line.get(name).isJsonNull() ? "" : line.get(name).getAsString();
  }

  private static String amount(JsonObject line, String name) {
    return line.get(name).isJsonNull()
        ? "as needed"
        : plain(line, name) + " " + line.get("unit").getAsString();
  }

  static String cost(JsonObject answer, int pieces) {
    int without = answer.getAsJsonArray("unpriced").size();
    String open = without == 0 ? "" : " " + without + " of the lines have no price yet.";
    if (answer.get("cost").getAsDouble() <= 0) {
      return "No price is typed yet." + open;
    }
    String each =
        pieces == 1 ? "" : ", " + answer.get("cost_per_piece").getAsString() + " for each piece";
    return "What has a price comes to " + answer.get("cost").getAsString() + each + "." + open;
  }

  private static void codes(TextPages text, String list) throws IOException {
    List<String> parts = PhoneText.parts(list);
    if (parts.isEmpty()) {
      text.paragraph("Nothing to buy.");
      return;
    }
    text.heading("For the phone: photograph each code");
    int at = 0;
    for (String part : parts) {
      if (at % 3 == 0) {
        text.need(CODE_MM + 4);
      }
      code(text.pen(), new double[] {Pages.MARGIN_MM + at % 3 * (CODE_MM + 6), text.y()}, part);
      at++;
      if (at % 3 == 0 || at == parts.size()) {
        text.down(CODE_MM + 4);
      }
    }
  }

  private static void code(MmPen pen, double[] at, String part) throws IOException {
    List<String> rows = QrSquares.rows(part);
    double side = CODE_MM / (rows.size() + 8);
    for (int y = 0; y < rows.size(); y++) {
      for (int x = 0; x < rows.size(); x++) {
        if (rows.get(y).charAt(x) == '1') {
          double left = at[0] + (x + 4) * side;
          pen.fill(0, left, at[1] + (y + 4) * side, side * 1.02, side * 1.02);
        }
      }
    }
  }
}
