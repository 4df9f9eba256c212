package org.lehrcase.bench.templates;

import java.io.IOException;

/** Two rulers of exactly 100 mm, one along each side: what a print is measured by. */
final class Rulers {
  static final int LONG_MM = 100;
  private static final double NUMBER_MM = 2.1;

  private Rulers() {}

  /** Draws a ruler to the right of the pen's origin, ticks downwards. */
  static void across(MmPen pen) throws IOException {
    pen.line(MmPen.Line.EDGE, 0, 0, LONG_MM, 0);
    for (int mm = 0; mm <= LONG_MM; mm++) {
      pen.line(MmPen.Line.HAIR, mm, 0, mm, tick(mm));
      if (mm % 10 == 0) {
        pen.middle(mm, tick(mm) + NUMBER_MM, NUMBER_MM, String.valueOf(mm));
      }
    }
  }

  /** Draws a ruler downwards from the pen's origin, ticks to the left. */
  static void down(MmPen pen) throws IOException {
    pen.line(MmPen.Line.EDGE, 0, 0, 0, LONG_MM);
    for (int mm = 0; mm <= LONG_MM; mm++) {
      pen.line(MmPen.Line.HAIR, -tick(mm), mm, 0, mm);
      if (mm % 10 == 0) {
        pen.endingAt(-tick(mm) - 0.6, mm + NUMBER_MM / 3, NUMBER_MM, String.valueOf(mm));
      }
    }
  }

  private static double tick(int mm) {
    return mm % 10 == 0 ? 3.2 : mm % 5 == 0 ? 2.4 : 1.5;
  }
}
