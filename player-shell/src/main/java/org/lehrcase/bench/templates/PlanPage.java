package org.lehrcase.bench.templates;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.lehrcase.bench.kilns.PaperUnits;
import org.lehrcase.bench.templates.MmPen.Line;
import org.lehrcase.core.layers.outline.Point;

/** The whole plan on one page: every sheet small, front to back, the block, the permission. */
final class PlanPage {
  private static final double GAP_MM = 5;
  private static final double WORDS_MM = 13;
  private static final double TOP_MM = 46;
  private static final double FOOT_MM = 26;
  private static final double CAPTION_MM = 2.5;
  private static final float LIGHTEST = 0.94f;
  private static final float DARKEST = 0.45f;

  private final PiecePlan plan;
  private final Pages pages;
  private final PaperUnits units;

  PlanPage(PiecePlan plan, Pages pages) {
    this.plan = plan;
    this.pages = pages;
    this.units = pages.wish().units();
  }

  void add() throws IOException {
    MmPen pen = pages.upright();
    pen.fitted(Pages.MARGIN_MM, 20, 6.5, pages.widthMm(), plan.name());
    pen.paragraph(Pages.MARGIN_MM, 27, Pages.TEXT_MM, pages.widthMm(), facts());
    double room = pages.bottomMm() - FOOT_MM - TOP_MM;
    int columns = columns(pages.widthMm(), room);
    double wide = (pages.widthMm() - (columns - 1) * GAP_MM) / columns;
    for (int i = 0; i < plan.sheets().size(); i++) {
      double x = Pages.MARGIN_MM + i % columns * (wide + GAP_MM);
      int row = i / columns;
      double y = TOP_MM + row * rowMm(wide);
      sheet(pen, plan.sheets().get(i), new Cell(x, y, wide));
    }
    foot(pen);
  }

  private record Cell(double xMm, double yMm, double wideMm) {}

  private double rowMm(double wide) {
    return wide * plan.heightMm() / plan.widthMm() + WORDS_MM;
  }

  /** The fewest columns with which all rows still fit. */
  private int columns(double width, double room) {
    int columns = 2;
    while (columns < 12) {
      double wide = (width - (columns - 1) * GAP_MM) / columns;
      int rows = (plan.sheets().size() + columns - 1) / columns;
      if (rows * rowMm(wide) <= room) {
        break;
      }
      columns++;
    }
    return columns;
  }

  private String facts() {
    double fused = plan.block().get("fused_mm").getAsDouble();
    return String.format(
        Locale.ROOT,
        "%d sheets of %s × %s, %s thick. Pile %s, fused %s, %.0f g of glass: weigh the pile, and"
            + " enter the fused thickness in the kiln sheet. %s",
        plan.sheets().size(),
        units.length(plan.widthMm()),
        units.length(plan.heightMm()),
        units.length(plan.thicknessMm()),
        units.length(plan.block().get("pile_mm").getAsDouble()),
        units.length(fused),
        plan.block().get("weight_g").getAsDouble(),
        pages.wish().mirrored()
            ? "All paint on the backs of the sheets."
            : "All paint on the fronts of the sheets.");
  }

  private void sheet(MmPen pen, PiecePlan.Sheet sheet, Cell cell) throws IOException {
    double scale = cell.wideMm() / plan.widthMm();
    double high = plan.heightMm() * scale;
    List<Point> edge = MmPen.corners(cell.xMm(), cell.yMm(), cell.wideMm(), high);
    float shade = (float) (LIGHTEST - (LIGHTEST - DARKEST) * sheet.contrast().orElse(0));
    pen.clip(edge);
    for (PiecePlan.Shape shape : plan.on(sheet.number())) {
      List<Point> corners = new ArrayList<>();
      for (Point p : shape.outline().orElseThrow().points()) {
        corners.add(new Point(cell.xMm() + p.xMm() * scale, cell.yMm() + p.yMm() * scale));
      }
      pen.fill(shade, corners);
      pen.polygon(Line.HAIR, corners);
    }
    pen.release();
    pen.polygon(Line.EDGE, edge);
    int last = plan.sheets().size();
    String place = sheet.number() == 1 ? " front" : sheet.number() == last ? " back" : "";
    double y = cell.yMm() + high + 3.4;
    pen.fitted(cell.xMm(), y, CAPTION_MM + 0.5, cell.wideMm(), sheet.number() + place);
    String names = sheet.names().isEmpty() ? "clear" : String.join(", ", sheet.names());
    pen.fitted(cell.xMm(), y + 3.4, CAPTION_MM, cell.wideMm(), names);
    pen.fitted(cell.xMm(), y + 6.5, CAPTION_MM, cell.wideMm(), figures(sheet));
  }

  /** Returns size, contrast, paint and tones of a sheet. */
  static String figures(PiecePlan.Sheet sheet) {
    if (sheet.scale().isEmpty()) {
      return "a spacer, or room for a wash";
    }
    return "size "
        + percent(sheet.scale())
        + " · contrast "
        + percent(sheet.contrast())
        + " · paint "
        + percent(sheet.film())
        + " · "
        + sheet.tones()
        + " tones";
  }

  static String percent(OptionalDouble share) {
    return Math.round(100 * share.orElse(0)) + " %";
  }

  private void foot(MmPen pen) throws IOException {
    double y = pages.bottomMm() - FOOT_MM + 6;
    y =
        pen.paragraph(
            Pages.MARGIN_MM,
            y,
            2.5,
            pages.widthMm(),
            "Enamel powder, kiln wash and fibre paper make dust: fitted mask, wet wiping, no dry"
                + " sweeping. Eyes and feet covered when glass is snapped. The makers' instructions"
                + " come first.");
    String permission =
        plan.permission()
            .map(Permission::words)
            .orElse("Reference picture: no permission is noted with this plan.");
    pen.paragraph(Pages.MARGIN_MM, y + 1, 2.2, pages.widthMm(), permission);
  }
}
