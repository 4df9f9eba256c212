package org.lehrcase.bench.templates;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lehrcase.bench.kilns.PaperUnits;
import org.lehrcase.bench.templates.MmPen.Line;

/** How the pile is stacked and dammed: the strips from above, the pile from the side, numbers. */
final class DamPage {
  private static final double DRAWING_MM = 80;
  private static final double ROW_MM = 5;
  private static final float GLASS = 0.85f;
  private static final float STRIP = 0.6f;

  private final PiecePlan plan;
  private final Pages pages;
  private final PaperUnits units;
  private final JsonObject block;

  DamPage(PiecePlan plan, Pages pages) {
    this.plan = plan;
    this.pages = pages;
    this.units = pages.wish().units();
    this.block = plan.block();
  }

  private double mm(String name) {
    return block.get(name).getAsDouble();
  }

  private double[] pair(String name) {
    JsonArray pair = block.getAsJsonArray(name);
    return new double[] {pair.get(0).getAsDouble(), pair.get(1).getAsDouble()};
  }

  void add() throws IOException {
    MmPen pen = pages.upright();
    pen.bold(Pages.MARGIN_MM, 20, 5.5, "Stack and dams");
    pen.fitted(Pages.MARGIN_MM, 26, Pages.TEXT_MM, pages.widthMm(), plan.name());
    fromAbove(pen.in(new MmPen.Frame(Pages.MARGIN_MM, 34, 1, 1)));
    fromTheSide(pen.in(new MmPen.Frame(Pages.MARGIN_MM + 100, 34, 1, 1)));
    double y = rows(pen, 126);
    y = troubles(pen, y + 3);
    order(pen, y + 5);
  }

  /** Four strips like a pinwheel: each covers the end of the next. */
  private void fromAbove(MmPen pen) throws IOException {
    double[] bed = pair("bed_mm");
    double[] strips = pair("strips_mm");
    double thick = strips[0] - bed[0];
    double[] foot = pair("footprint_mm");
    double k = DRAWING_MM / Math.max(foot[0], foot[1]);
    double a = bed[0] * k;
    double b = bed[1] * k;
    double s = thick * k;
    double liner = (bed[0] - plan.widthMm()) / 2 * k;
    strip(pen, 0, 0, a + s, s);
    strip(pen, a + s, 0, s, b + s);
    strip(pen, s, b + s, a + s, s);
    strip(pen, 0, s, s, b + s);
    pen.fill(GLASS, s + liner, s + liner, a - 2 * liner, b - 2 * liner);
    pen.box(Line.EDGE, s + liner, s + liner, a - 2 * liner, b - 2 * liner);
    pen.middle(s + a / 2, s + b / 2, 3, "glass");
    double middle = s + a / 2;
    pen.middle(middle, s / 2 + 1, 2.4, units.length(strips[0]));
    pen.middle(s + a / 2, s + b + s / 2 + 1, 2.4, units.length(strips[0]));
    pen.text(s + a + 0.6, s + b / 2, 2.2, units.length(strips[1]));
    pen.text(0.6, s + b / 2, 2.2, units.length(strips[1]));
    pen.text(0, b + 2 * s + 5, 2.6, "From above. Longer strips serve unchanged.");
  }

  private static void strip(MmPen pen, double x, double y, double w, double h) throws IOException {
    pen.fill(STRIP, x, y, w, h);
    pen.box(Line.EDGE, x, y, w, h);
  }

  private void fromTheSide(MmPen pen) throws IOException {
    double pile = mm("pile_mm");
    double dam = mm("least_dam_mm");
    double k = Math.min(2, DRAWING_MM / dam / 1.5);
    double floor = 10 + dam * k;
    int count = plan.sheets().size();
    double step = pile * k / count;
    for (int i = 0; i < count; i++) {
      pen.fill(GLASS, 12, floor - (i + 1) * step, 46, step);
      pen.box(Line.HAIR, 12, floor - (i + 1) * step, 46, step);
    }
    strip(pen, 0, floor - dam * k, 8, dam * k);
    strip(pen, 62, floor - dam * k, 8, dam * k);
    double liner = mm("liner_height_mm") * k;
    pen.fill(0.4f, 9, floor - liner, 2, liner);
    pen.fill(0.4f, 59, floor - liner, 2, liner);
    pen.line(Line.OUTLINE, -3, floor, 73, floor);
    double fused = mm("fused_mm") * k;
    pen.line(Line.SHADOW, 9, floor - fused, 61, floor - fused);
    pen.text(20, floor - fused - 0.8, 2.2, "fused: " + units.length(mm("fused_mm")));
    pen.text(0, floor + 5, 2.6, "From the side: dams above the unfired pile,");
    pen.text(0, floor + 9, 2.6, "the liner (dark) below the fused height.");
  }

  private double rows(MmPen pen, double top) throws IOException {
    List<String[]> rows = new ArrayList<>();
    double[] bed = pair("bed_mm");
    double[] strips = pair("strips_mm");
    double[] foot = pair("footprint_mm");
    rows.add(new String[] {"Dam to dam", both(bed)});
    rows.add(
        new String[] {
          "Strips", "2 of " + units.length(strips[0]) + ", 2 of " + units.length(strips[1])
        });
    rows.add(new String[] {"Dams at least", units.length(mm("least_dam_mm")) + " high"});
    rows.add(new String[] {"Liner", units.length(mm("liner_height_mm")) + " high, all round"});
    rows.add(new String[] {"Room on the shelf", both(foot) + ", and 25 mm more on every side"});
    rows.add(new String[] {"Unfired pile", units.length(mm("pile_mm"))});
    rows.add(
        new String[] {
          "Fused",
          units.length(mm("fused_mm"))
              + "; "
              + units.length(mm("fused_if_liner_gives_way_mm"))
              + " if the liner gives way. This goes into the kiln sheet."
        });
    rows.add(
        new String[] {
          "Weight", String.format(Locale.ROOT, "%.0f g; weighed: ________ g", mm("weight_g"))
        });
    double y = top;
    for (String[] row : rows) {
      pen.bold(Pages.MARGIN_MM, y, Pages.TEXT_MM, row[0]);
      pen.fitted(Pages.MARGIN_MM + 38, y, Pages.TEXT_MM, pages.widthMm() - 38, row[1]);
      y += ROW_MM;
    }
    return y;
  }

  private String both(double[] pair) {
    return units.length(pair[0]) + " × " + units.length(pair[1]);
  }

  private double troubles(MmPen pen, double top) throws IOException {
    double y = top;
    for (JsonElement trouble : block.getAsJsonArray("troubles")) {
      String words = "Look again: " + units.sentence(trouble.getAsString());
      y = pen.paragraph(Pages.MARGIN_MM, y, Pages.TEXT_MM, pages.widthMm(), words) + 1;
    }
    return y;
  }

  /** From the kiln shelf upwards, in as many columns as it takes. */
  private void order(MmPen pen, double top) throws IOException {
    pen.bold(Pages.MARGIN_MM, top, 4, "Order: lay the back sheet first");
    String face = pages.wish().mirrored() ? "painted face down" : "painted face up";
    pen.text(
        Pages.MARGIN_MM,
        top + 5,
        2.8,
        "Each with its " + face + ", one tick at the upper left; the notches make a staircase.");
    int count = plan.sheets().size();
    int rows = Math.max(1, (int) ((pages.bottomMm() - top - 10) / 4.4));
    int columns = (count + rows - 1) / rows;
    double wide = pages.widthMm() / columns;
    for (int i = 0; i < count; i++) {
      PiecePlan.Sheet sheet = plan.sheets().get(count - 1 - i);
      int column = i / rows;
      double x = Pages.MARGIN_MM + column * wide;
      double y = top + 11 + i % rows * 4.4;
      pen.box(Line.HAIR, x, y - 2.5, 2.8, 2.8);
      String names = sheet.names().isEmpty() ? "clear" : String.join(", ", sheet.names());
      pen.fitted(x + 5, y, 2.9, wide - 8, sheet.number() + ": " + names);
    }
  }
}
