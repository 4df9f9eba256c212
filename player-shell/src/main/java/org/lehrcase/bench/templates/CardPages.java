package org.lehrcase.bench.templates;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import org.lehrcase.bench.templates.MmPen.Line;

/** A card for every sheet: what is on it, how pale, and boxes to tick over the weeks. */
final class CardPages {
  private static final int COLUMNS = 2;
  private static final int ROWS = 4;
  private static final double GAP_MM = 4;
  private static final double TOP_MM = 14;
  private static final double STRIP_MM = 6;
  private static final List<String> STATES =
      List.of("cut", "cleaned", "weighed ____ g", "painted", "fired", "checked");

  private final PiecePlan plan;
  private final Pages pages;
  private final double wide;
  private final double high;

  CardPages(PiecePlan plan, Pages pages) {
    this.plan = plan;
    this.pages = pages;
    this.wide = (pages.widthMm() - GAP_MM) / COLUMNS;
    this.high = (pages.bottomMm() - TOP_MM - (ROWS - 1) * GAP_MM) / ROWS;
  }

  void all() throws IOException {
    MmPen pen = null;
    for (int i = 0; i < plan.sheets().size(); i++) {
      int at = i % (COLUMNS * ROWS);
      if (pen == null || at == 0) {
        pen = pages.upright();
      }
      double x = Pages.MARGIN_MM + at % COLUMNS * (wide + GAP_MM);
      int row = at / COLUMNS;
      double y = TOP_MM + row * (high + GAP_MM);
      card(pen.in(new MmPen.Frame(x, y, 1, 1)), plan.sheets().get(i));
    }
  }

  private void card(MmPen pen, PiecePlan.Sheet sheet) throws IOException {
    double room = wide - 8;
    pen.box(Line.EDGE, 0, 0, wide, high);
    pen.bold(4, 7, 5, "Sheet " + sheet.number());
    pen.fitted(30, 7, 2.8, room - 26, plan.name());
    String names = sheet.names().isEmpty() ? "clear" : String.join(", ", sheet.names());
    pen.fitted(4, 12.5, 3.2, room, names);
    pen.fitted(4, 17, 2.6, room, PlanPage.figures(sheet));
    pen.fitted(4, 21, 2.6, room, edges(sheet));
    tones(pen, sheet, 23.5);
    boxes(pen, 36);
    pen.text(4, 52, 2.6, "Firings:");
    for (int i = 0; i < 5; i++) {
      pen.box(Line.HAIR, 18 + i * 6, 49.6, 3, 3);
    }
    pen.line(Line.HAIR, 4, high - 4, wide - 4, high - 4);
  }

  private String edges(PiecePlan.Sheet sheet) {
    var units = pages.wish().units();
    String tuck =
        plan.paintedInFrontOf(sheet.number()) == 0
            ? "in front of all"
            : "behind outlines paint on " + units.length(plan.tuckMm(sheet.number()));
    return tuck + ", past an opening " + units.length(sheet.marginMm());
  }

  /** From black to white in the sheet's tones, as pale as this sheet keeps them. */
  private void tones(MmPen pen, PiecePlan.Sheet sheet, double y) throws IOException {
    int count = sheet.tones();
    double step = (wide - 8) / Math.max(1, count);
    for (int i = 0; i < count; i++) {
      double plain = count == 1 ? 0 : (double) i / (count - 1);
      pen.fill((float) faded(plain, sheet.contrast().orElse(1)), 4 + i * step, y, step, STRIP_MM);
      pen.box(Line.HAIR, 4 + i * step, y, step, STRIP_MM);
    }
  }

  /** Mixes a shade with white in linear light (transfer function of IEC 61966-2-1). */
  static double faded(double shade, double contrast) {
    double linear = shade <= 0.04045 ? shade / 12.92 : Math.pow((shade + 0.055) / 1.055, 2.4);
    double mixed = 1 - contrast * (1 - linear);
    return mixed <= 0.0031308 ? 12.92 * mixed : 1.055 * Math.pow(mixed, 1 / 2.4) - 0.055;
  }

  private void boxes(MmPen pen, double top) throws IOException {
    double step = (wide - 8) / 3;
    for (int i = 0; i < STATES.size(); i++) {
      double x = 4 + i % 3 * step;
      double y = top + i / 3 * 6;
      pen.box(Line.HAIR, x, y - 2.6, 3, 3);
      pen.text(x + 4.5, y, 2.8, STATES.get(i).toLowerCase(Locale.ROOT));
    }
  }
}
