package org.lehrcase.demo;

import java.awt.Color;
import java.awt.geom.Point2D;
import java.util.LinkedHashMap;
import java.util.Map;

/** The printable templates in true size, A4 lying, each with a ruler and corner marks. */
final class Templates {
  private static final double LEFT = 58.5;
  private static final double TOP = 34;
  private static final Color PALE = new Color(0x8FA5A8);

  private Templates() {}

  /** Returns file names and SVG texts of a lesson. */
  static Map<String, String> of(Lesson lesson) {
    Map<String, String> files = new LinkedHashMap<>();
    switch (lesson.id()) {
      case "A1" -> {
        files.put("1 Test page.template.svg", testPage());
        files.put("2 Thumbnails.template.svg", thumbnails());
      }
      case "A2" -> sheets(files, 5, 6);
      case "A3" -> sheets(files, 1, 4);
      case "B2" -> files.put("1 Stacking sheet.template.svg", stacking());
      default -> {}
    }
    return files;
  }

  private static void sheets(Map<String, String> files, int from, int to) {
    for (int k = from; k <= to; k++) {
      files.put("Sheet " + k + ".template.svg", sheet(k));
    }
  }

  private static SvgPen page(String title) {
    SvgPen pen = new SvgPen(297, 210);
    pen.text(title, LEFT, 18, Type.bold(6, Palette.INK));
    pen.text(
        "Reef Garden in Six Sheets. Print at 100 %, then measure the ruler.",
        LEFT, 25, Type.regular(3.4, Palette.SLATE));
    Ruler.draw(pen, LEFT, 182);
    return pen;
  }

  private static void frame(Pen pen) {
    pen.line(Pen.box(0, 0, 180, 130), Palette.INK, 0.3);
    CornerMarks.draw(pen, Palette.INK);
    pen.arrow(new Point2D.Double(-12, 30), new Point2D.Double(-12, 8), Palette.INK, 0.5);
    pen.text("top", -12, 36, Type.regular(3.6, Palette.INK).centered());
    pen.text("R", 190, 14, Type.bold(9, Palette.INK).centered());
  }

  private static String sheet(int number) {
    String title = "Sheet " + number + ": " + Reef.name(number);
    SvgPen page = page(title);
    Pen pen = page.at(LEFT, TOP, 1);
    if (number > 1) {
      outlines(pen, number - 1, PALE, 0.2, 1.6, 1.4);
      page.text(
          "dashed: sheet " + (number - 1) + ", which lies in front",
          LEFT + 180,
          172,
          Type.regular(3.2, Palette.SLATE).right());
    }
    outlines(pen, number, Palette.INK, 0.35);
    frame(pen);
    double notch = 22 + 26 * (number - 1);
    pen.fill(Pen.polygon(notch, 130, notch + 9, 130, notch + 4.5, 121), Palette.INK);
    page.text(
        "painted face up; keep 4 mm clean at the rim", LEFT, 172, Type.regular(3.2, Palette.SLATE));
    page.text(String.valueOf(number), LEFT - 12, TOP + 120, Type.bold(16, Palette.INK).centered());
    return page.document(title);
  }

  private static void outlines(Pen pen, int number, Color color, double width, double... dash) {
    for (Patch patch : Reef.sheet(number)) {
      if (patch.outline()) {
        pen.line(patch.shape(), color, width, dash);
      }
    }
  }

  private static String testPage() {
    SvgPen page = page("Test page");
    Pen pen = page.at(LEFT, TOP, 1);
    frame(pen);
    pen.line(Pen.way(90, 20, 90, 120), Palette.INK, 0.3);
    for (int mm = 0; mm <= 100; mm += 5) {
      double tall = mm % 10 == 0 ? 5 : 3;
      pen.line(Pen.way(90, 20 + mm, 90 + tall, 20 + mm), Palette.INK, 0.2);
    }
    pen.text("100 mm down", 98, 72, Type.regular(3.6, Palette.INK));
    pen.line(Pen.box(20, 30, 50, 50), Palette.INK, 0.3);
    pen.text("50 × 50 mm", 45, 57, Type.regular(3.6, Palette.INK).centered());
    pen.text(
        "Lay a sheet of glass on the frame: it must fit edge to edge.",
        90,
        126,
        Type.regular(3.4, Palette.SLATE).centered());
    return page.document("Test page");
  }

  private static String thumbnails() {
    SvgPen page = page("Thumbnails");
    for (int k = 1; k <= 6; k++) {
      double x = LEFT + (k - 1) % 3 * 62;
      double y = TOP + 4 + (k - 1) / 3 * 66;
      Pen pen = page.at(x, y, 56.0 / 180);
      outlines(pen, k, Palette.INK, 0.7);
      pen.line(Pen.box(0, 0, 180, 130), Palette.INK, 1);
      page.text(k + "  " + Reef.name(k), x, y + 46, Type.regular(3.6, Palette.INK));
      String kept = Math.round(Palette.strength(k) * 100) + " %";
      page.text(kept, x + 56, y + 46, Type.bold(3.6, Palette.SLATE).right());
    }
    return page.document("Thumbnails");
  }

  private static String stacking() {
    SvgPen page = page("Stacking sheet");
    Pen pen = page.at(LEFT, TOP, 1);
    pen.line(Pen.box(-1, -1, 182, 132), Palette.INK, 0.4);
    pen.line(Pen.box(0, 0, 180, 130), PALE, 0.3, 2, 1.5);
    CornerMarks.draw(pen, Palette.INK);
    for (int k = 1; k <= 6; k++) {
      double y = 16 + k * 15;
      pen.line(Pen.soft(36, y - 8, 108, 10, 1), Palette.INK, 0.3);
      pen.text(k + "   " + Reef.name(k), 42, y - 1.4, Type.regular(4.4, Palette.INK));
      pen.line(Pen.box(148, y - 6, 5, 5), Palette.INK, 0.3);
      double notch = 22 + 26 * (k - 1);
      pen.line(Pen.polygon(notch, 130, notch + 9, 130, notch + 4.5, 121), Palette.INK, 0.3);
    }
    pen.text("eye", 90, 15, Type.bold(4.4, Palette.INK).centered());
    pen.text("shelf", 90, 116, Type.bold(4.4, Palette.INK).centered());
    page.text(
        "bed 182 × 132 mm, sheets 180 × 130 mm (dashed)",
        LEFT + 181,
        172,
        Type.regular(3.4, Palette.SLATE).right());
    return page.document("Stacking sheet");
  }
}
