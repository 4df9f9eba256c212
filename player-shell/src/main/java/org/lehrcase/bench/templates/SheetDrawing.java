package org.lehrcase.bench.templates;

import java.io.IOException;
import java.util.List;
import org.lehrcase.bench.templates.MmPen.Line;
import org.lehrcase.core.layers.outline.Outline;
import org.lehrcase.core.layers.outline.Point;
import org.lehrcase.core.layers.paper.Format;

/**
 * The drawing of one sheet in its own millimetres: outlines, what the sheet in front hides and how
 * far paint goes on behind it, marks that no turn and no mirror maps on each other, and the notch
 * that makes a staircase of a pile in the right order.
 */
final class SheetDrawing {
  private static final double NAME_MM = 3;
  private static final double TICK_MM = 4;
  private static final double NOTCH_MM = 4;
  private static final double NOTCH_STEP_MM = 7;
  private static final float TUCK_GREY = 0.88f;
  private static final float TUCK_LINE_GREY = 0.45f;
  private static final double TUCK_LINE_MM = 0.2;

  private final PiecePlan plan;
  private final PiecePlan.Sheet sheet;
  private final boolean mirrored;

  SheetDrawing(PiecePlan plan, PiecePlan.Sheet sheet, boolean mirrored) {
    this.plan = plan;
    this.sheet = sheet;
    this.mirrored = mirrored;
  }

  void draw(MmPen pen) throws IOException {
    pen.clip(MmPen.corners(0, 0, plan.widthMm(), plan.heightMm()));
    inFront(pen);
    for (PiecePlan.Shape shape : plan.on(sheet.number())) {
      pen.polygon(Line.OUTLINE, shown(shape.outline().orElseThrow()));
    }
    pen.release();
    for (PiecePlan.Shape shape : plan.on(sheet.number())) {
      name(pen, shape);
    }
    marks(pen);
    pen.box(Line.EDGE, 0, 0, plan.widthMm(), plan.heightMm());
    if (mirrored) {
      mirroredR(pen);
    } else {
      pen.bold(6, plan.heightMm() - 2.2, 5, "R");
    }
  }

  private List<Point> shown(Outline outline) {
    return mirrored
        ? outline.points().stream().map(p -> new Point(across(p.xMm()), p.yMm())).toList()
        : outline.points();
  }

  private double across(double xMm) {
    return mirrored ? Format.mirrored(xMm, plan.widthMm()) : xMm;
  }

  /**
   * Inside an outline in front, all that lies nearer to it than the tuck-under is grey, and ends in
   * a line: a broad stroke, and a narrower, paler one on it, both held inside.
   */
  private void inFront(MmPen pen) throws IOException {
    int front = plan.paintedInFrontOf(sheet.number());
    double tuck = front == 0 ? 0 : plan.tuckMm(sheet.number());
    for (PiecePlan.Shape shape : plan.on(front)) {
      List<Point> corners = shown(shape.outline().orElseThrow());
      if (tuck > 0) {
        pen.clip(corners);
        pen.polygon(new Line(2 * tuck + 2 * TUCK_LINE_MM, TUCK_LINE_GREY), corners);
        pen.polygon(new Line(2 * tuck, TUCK_GREY), corners);
        pen.release();
      }
      pen.polygon(Line.SHADOW, corners);
    }
  }

  private void name(MmPen pen, PiecePlan.Shape shape) throws IOException {
    var box = shape.outline().orElseThrow().box();
    double x = Math.max(0, Math.min(plan.widthMm(), (box.x0Mm() + box.x1Mm()) / 2));
    double y = Math.max(NAME_MM, Math.min(plan.heightMm(), (box.y0Mm() + box.y1Mm()) / 2));
    pen.middle(across(x), y, NAME_MM, shape.name());
  }

  /** One tick at the upper left, two at the upper right, as seen from the front. */
  private void marks(MmPen pen) throws IOException {
    double width = plan.widthMm();
    line(pen, 0, 5, TICK_MM, 5);
    line(pen, width - TICK_MM, 5, width, 5);
    line(pen, width - TICK_MM, 7, width, 7);
    double left = notchMm();
    double low = plan.heightMm();
    line(pen, left, low, left, low - NOTCH_MM);
    line(pen, left, low - NOTCH_MM, left + 3, low - NOTCH_MM);
    line(pen, left + 3, low - NOTCH_MM, left + 3, low);
  }

  /** Returns how far the notch lies from the left edge, as seen from the front. */
  double notchMm() {
    int count = plan.sheets().size();
    double step = Math.min(NOTCH_STEP_MM, (plan.widthMm() - 22) / count);
    return 12 + step * (sheet.number() - 1);
  }

  private void line(MmPen pen, double x1, double y1, double x2, double y2) throws IOException {
    pen.line(Line.EDGE, across(x1), y1, across(x2), y2);
  }

  /** A letter that shows at a glance that the paper is meant to be mirrored. */
  private void mirroredR(MmPen pen) throws IOException {
    double foot = plan.heightMm() - 2.2;
    double stem = across(6.4);
    double bow = across(9);
    double top = foot - 3.7;
    double waist = foot - 1.8;
    var heavy = new Line(0.6, 0);
    pen.line(heavy, stem, foot, stem, top);
    pen.line(heavy, stem, top, bow, top);
    pen.line(heavy, bow, top, bow, waist);
    pen.line(heavy, bow, waist, stem, waist);
    pen.line(heavy, (stem + bow) / 2, waist, bow, foot);
  }
}
