package org.lehrcase.bench.templates;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.layers.CutService;
import org.lehrcase.bench.templates.MmPen.Line;

/** The cut list: every stock sheet with its pieces and its scores, numbered in their order. */
final class CutPages {
  private static final double HALF_MM = 100;
  private static final double ROW_MM = 4.3;
  private static final Line SCORE = new Line(0.4, 0, 3f, 1.2f);

  private final JsonObject answer;
  private final Pages pages;

  private CutPages(JsonObject answer, Pages pages) {
    this.answer = answer;
    this.pages = pages;
  }

  /**
   * Computes a cut list and draws it.
   *
   * @param request as {@code cut} takes it
   * @throws FieldTrouble at a field of it, or if not everything comes out of the stock
   */
  static void add(JsonObject request, Pages pages) throws FieldTrouble, IOException {
    CutService.Answer answer = CutService.answer(request.toString());
    if (!answer.possible()) {
      throw new FieldTrouble("stock_mm", "nothing of this fits: take larger stock");
    }
    new CutPages(answer.json(), pages).draw();
  }

  private void draw() throws IOException {
    for (JsonElement element : answer.getAsJsonArray("sheets")) {
      stock(element.getAsJsonObject());
    }
  }

  private List<JsonObject> of(String list, int number) {
    List<JsonObject> mine = new ArrayList<>();
    JsonArray all = answer.getAsJsonArray(list);
    for (JsonElement one : all) {
      if (one.getAsJsonObject().get("stock_sheet").getAsInt() == number) {
        mine.add(one.getAsJsonObject());
      }
    }
    return mine;
  }

  private static double mm(JsonObject from, String name) {
    return from.get(name).getAsDouble();
  }

  private String size(JsonObject rect) {
    var units = pages.wish().units();
    return units.length(mm(rect, "w_mm")) + " × " + units.length(mm(rect, "h_mm"));
  }

  private void stock(JsonObject sheet) throws IOException {
    int number = sheet.get("stock_sheet").getAsInt();
    MmPen pen = pages.upright();
    pen.bold(
        Pages.MARGIN_MM,
        20,
        5.5,
        "Cut list: stock sheet " + number + " of " + answer.getAsJsonArray("sheets").size());
    double y =
        pen.paragraph(
            Pages.MARGIN_MM,
            27,
            Pages.TEXT_MM,
            pages.widthMm(),
            size(sheet)
                + ", "
                + sheet.get("pieces").getAsInt()
                + " pieces, "
                + sheet.get("scores").getAsInt()
                + " scores. "
                + answer.get("message").getAsString()
                + " Score in this order, each from edge to edge of the part in hand, and snap it"
                + " before the next. Eye protection, shoes, gloves for the edges.");
    double scale =
        Math.min(pages.widthMm() / mm(sheet, "w_mm"), (HALF_MM + 20) / mm(sheet, "h_mm"));
    picture(pen.in(new MmPen.Frame(Pages.MARGIN_MM, y + 2, 1, 1)), sheet, scale);
    table(pen, number, y + 10 + mm(sheet, "h_mm") * scale);
  }

  private void picture(MmPen pen, JsonObject sheet, double scale) throws IOException {
    int number = sheet.get("stock_sheet").getAsInt();
    for (JsonObject piece : of("placed", number)) {
      double x = mm(piece, "x_mm") * scale;
      double y = mm(piece, "y_mm") * scale;
      double w = mm(piece, "w_mm") * scale;
      double h = mm(piece, "h_mm") * scale;
      pen.fill(0.88f, x, y, w, h);
      pen.middle(x + w / 2, y + h / 2, Math.min(3.2, w / 9), size(piece));
    }
    for (JsonObject rest : of("off_cuts", number)) {
      double wide = mm(rest, "w_mm") * scale;
      if (wide > 14 && mm(rest, "h_mm") * scale > 4) {
        double middle = mm(rest, "x_mm") * scale + wide / 2;
        double y = (mm(rest, "y_mm") + mm(rest, "h_mm") / 2) * scale;
        pen.middle(middle, y, Math.min(2.6, wide / 14), "off-cut " + size(rest));
      }
    }
    pen.box(Line.OUTLINE, 0, 0, mm(sheet, "w_mm") * scale, mm(sheet, "h_mm") * scale);
    for (JsonObject score : of("scores", number)) {
      double[] ends = ends(score, scale);
      pen.line(SCORE, ends[0], ends[1], ends[2], ends[3]);
      boolean upright = score.get("direction").getAsString().equals("upright");
      double x = ends[0] + (upright ? 0.8 : 1.5);
      pen.bold(x, ends[1] + (upright ? 4 : -0.8), 3.6, score.get("number").getAsString());
    }
  }

  private static double[] ends(JsonObject score, double scale) {
    JsonArray from = score.getAsJsonArray("from_mm");
    JsonArray to = score.getAsJsonArray("to_mm");
    return new double[] {
      from.get(0).getAsDouble() * scale,
      from.get(1).getAsDouble() * scale,
      to.get(0).getAsDouble() * scale,
      to.get(1).getAsDouble() * scale
    };
  }

  /** Every score in words, in two columns, and on a page of its own what does not fit. */
  private void table(MmPen first, int number, double top) throws IOException {
    MmPen pen = first;
    double y = top;
    for (JsonObject score : of("scores", number)) {
      if (y > pages.bottomMm()) {
        pen = pages.upright();
        pen.bold(Pages.MARGIN_MM, 20, 4.5, "Stock sheet " + number + ", more scores");
        y = 30;
      }
      pen.box(Line.HAIR, Pages.MARGIN_MM, y - 2.6, 3, 3);
      pen.text(Pages.MARGIN_MM + 5, y, Pages.TEXT_MM, words(score));
      y += ROW_MM + 0.6;
    }
  }

  private String words(JsonObject score) {
    boolean upright = score.get("direction").getAsString().equals("upright");
    String narrow =
        score.get("too_narrow_to_snap").getAsBoolean()
            ? "; the strip is too narrow to snap: nibble it off"
            : "";
    return String.format(
        Locale.ROOT,
        "%d. %s, %s from the %s edge%s",
        score.get("number").getAsInt(),
        upright ? "upright" : "level",
        pages.wish().units().length(mm(score, "at_mm")),
        upright ? "left" : "upper",
        narrow);
  }
}
