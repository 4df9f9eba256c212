package org.lehrcase.bench.templates;

import java.io.IOException;
import org.lehrcase.bench.templates.MmPen.Line;
import org.lehrcase.core.layers.paper.Paper;
import org.lehrcase.core.layers.paper.Tiling;

/**
 * A template for every sheet at true size. One that is larger than the paper goes over several
 * pages, which share a strip with crosses at the same places of the drawing; every page has its
 * rulers.
 */
final class SheetTemplates {
  /** What two neighbouring pages both show. */
  static final double OVERLAP_MM = 10;

  /** Half of what stays free on both sides together, and above and below together. */
  static final double MARGIN_MM = 13;

  /** The rulers stand at the left and below, so the drawing lies a little to the right and up. */
  static final double LEFT_MM = 18;

  static final double TOP_MM = 11;

  private static final double CROSS_MM = 2.5;
  private static final double HEAD_MM = 2.9;

  private final PiecePlan plan;
  private final Pages pages;
  private final Tiling tiling;
  private final Paper paper;

  SheetTemplates(PiecePlan plan, Pages pages) {
    this.plan = plan;
    this.pages = pages;
    this.tiling =
        Tiling.of(plan.widthMm(), plan.heightMm(), usable(pages.wish()), MARGIN_MM, OVERLAP_MM);
    Paper upright = pages.wish().paper();
    this.paper = tiling.landscape() ? upright.turned() : upright;
  }

  /** A drawing that is made larger for a printer has so much less room. */
  private static Paper usable(PaperWish wish) {
    double free = 2 * MARGIN_MM;
    return new Paper(
        (wish.paper().widthMm() - free) / wish.across() + free,
        (wish.paper().heightMm() - free) / wish.down() + free);
  }

  Tiling tiling() {
    return tiling;
  }

  void all() throws IOException {
    for (PiecePlan.Sheet sheet : plan.sheets()) {
      for (Tiling.Tile tile : tiling.tiles()) {
        page(sheet, tile);
      }
    }
  }

  private void page(PiecePlan.Sheet sheet, Tiling.Tile tile) throws IOException {
    MmPen pen = pages.page(tiling.landscape());
    MmPen.Frame at = pages.frame(LEFT_MM, TOP_MM, tiling.landscape());
    MmPen.Frame origin =
        new MmPen.Frame(
            at.xMm() - at.kx() * tile.xMm(), at.yMm() - at.ky() * tile.yMm(), at.kx(), at.ky());
    MmPen drawing = pen.in(origin);
    drawing.clip(
        MmPen.corners(tile.xMm(), tile.yMm(), tiling.partXMm() + 0.2, tiling.partYMm() + 0.2));
    new SheetDrawing(plan, sheet, pages.wish().mirrored()).draw(drawing);
    drawing.release();
    joins(drawing, tile);
    rulers(pen);
    head(pen, sheet, tile);
  }

  private void rulers(MmPen pen) throws IOException {
    boolean landscape = tiling.landscape();
    double below = paper.heightMm() - 2 * MARGIN_MM + TOP_MM + 1.5;
    Rulers.across(pen.in(pages.frame(LEFT_MM, below, landscape)));
    Rulers.down(pen.in(pages.frame(LEFT_MM - 1.5, TOP_MM, landscape)));
    String note =
        pages.wish().isCorrected()
            ? "Corrected for your printer: both rulers must now measure 100 mm."
            : "Both rulers must measure 100 mm; if not, print at 100 %, or type in what they read.";
    double from = LEFT_MM + Rulers.LONG_MM * 1.03 + 4;
    pen.fitted(from, below + 3.5, 2.4, paper.widthMm() - 8 - from, note);
  }

  private void head(MmPen pen, PiecePlan.Sheet sheet, Tiling.Tile tile) throws IOException {
    double right = paper.widthMm() - 8;
    double room = right - LEFT_MM;
    if (plan.isClassOnly()) {
      double wide = pen.widthMm(Permission.CLASS_ONLY, HEAD_MM) * 1.06;
      pen.bold(right - wide, 7.2, HEAD_MM, Permission.CLASS_ONLY);
      room -= wide + 4;
    }
    String page = tiling.pages() == 1 ? "" : " · page " + tile.name() + " of " + tiling.pages();
    String face =
        pages.wish().mirrored()
            ? "painted on its back: mirrored, as its painted face is seen"
            : "painted on its front: as seen";
    String title =
        "top \u2191 · "
            + plan.name()
            + " · sheet "
            + sheet.number()
            + " of "
            + plan.sheets().size()
            + page
            + " · "
            + face;
    pen.fitted(LEFT_MM, 7.2, HEAD_MM, room, title);
  }

  /** Two crosses in the middle of every strip that two pages share, a quarter from its ends. */
  private void joins(MmPen pen, Tiling.Tile tile) throws IOException {
    double endX = Math.min(plan.widthMm(), tile.xMm() + tiling.partXMm());
    double endY = Math.min(plan.heightMm(), tile.yMm() + tiling.partYMm());
    for (int column = 1; column < tiling.across(); column++) {
      double x = column * tiling.stepXMm() + OVERLAP_MM / 2;
      if (x > tile.xMm() && x < endX) {
        cross(pen, x, tile.yMm() + (endY - tile.yMm()) / 4);
        cross(pen, x, tile.yMm() + (endY - tile.yMm()) * 3 / 4);
      }
    }
    for (int row = 1; row < tiling.down(); row++) {
      double y = row * tiling.stepYMm() + OVERLAP_MM / 2;
      if (y > tile.yMm() && y < endY) {
        cross(pen, tile.xMm() + (endX - tile.xMm()) / 4, y);
        cross(pen, tile.xMm() + (endX - tile.xMm()) * 3 / 4, y);
      }
    }
  }

  private static void cross(MmPen pen, double x, double y) throws IOException {
    pen.line(Line.EDGE, x - CROSS_MM, y, x + CROSS_MM, y);
    pen.line(Line.EDGE, x, y - CROSS_MM, x, y + CROSS_MM);
  }
}
