package org.lehrcase.demo;

/** A ruler of exactly 100 mm. */
final class Ruler {
  private Ruler() {}

  static void draw(Pen pen, double x, double y) {
    pen.line(Pen.way(x, y, x + 100, y), Palette.INK, 0.3);
    for (int mm = 0; mm <= 100; mm++) {
      double tall = mm % 10 == 0 ? 5 : mm % 5 == 0 ? 3.6 : 2.2;
      pen.line(Pen.way(x + mm, y, x + mm, y + tall), Palette.INK, mm % 10 == 0 ? 0.25 : 0.15);
      if (mm % 10 == 0) {
        pen.text(String.valueOf(mm), x + mm, y + 9, Type.regular(3, Palette.INK).centered());
      }
    }
    pen.text("mm: measure me; print at 100 %", x + 104, y + 3, Type.regular(3, Palette.SLATE));
  }
}
