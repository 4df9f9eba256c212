package org.lehrcase.bench.printing;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.bench.printing.PaperPen.At;
import org.lehrcase.core.glass.CurvePoint;

/** The curve of a firing on paper, another one dashed behind it. */
final class PaperCurve {
  private static final float LETTERS = 6.6f;
  private static final float WORDS_GREY = 0.35f;
  private static final float GRID_GREY = 0.75f;
  private static final double HEADROOM = 1.05;

  private final KilnSheetPaper.Curves curves;
  private final PaperPen pen;
  private final Box box;
  private final double hours;
  private final double hottest;

  /** Where it is drawn, points. */
  record Box(float left, float top, float wide, float high) {}

  PaperCurve(KilnSheetPaper.Curves curves, PaperPen pen, Box box) {
    this.curves = curves;
    this.pen = pen;
    this.box = box;
    this.hours = Math.max(last(curves.mine()), last(curves.other()));
    this.hottest = HEADROOM * Math.max(hottest(curves.mine()), hottest(curves.other()));
  }

  void draw() throws IOException {
    degrees();
    clock();
    pen.grey(WORDS_GREY);
    pen.path(points(curves.other()), true);
    pen.grey(0);
    pen.path(points(curves.mine()), false);
    String legend = curves.other().isEmpty() ? "" : "; dashed: " + curves.otherName();
    pen.textUpTo(
        new At(box.left() + box.wide(), box.top() + box.high() + 17, LETTERS),
        "hours. Drawn: this firing" + legend);
  }

  private void degrees() throws IOException {
    pen.grey(WORDS_GREY);
    pen.textUpTo(new At(box.left() - 3, box.top() - 3, LETTERS), curves.unit());
    pen.grey(GRID_GREY);
    pen.box(box.left(), box.top(), box.wide(), box.high());
    double step = hottest > 1000 ? 400 : 200;
    for (double shown = step; shown < hottest; shown += step) {
      float at = y(shown);
      pen.grey(GRID_GREY);
      pen.line(box.left(), at, box.left() + box.wide(), at);
      pen.grey(WORDS_GREY);
      pen.textUpTo(new At(box.left() - 3, at + 2, LETTERS), String.valueOf(Math.round(shown)));
    }
  }

  private void clock() throws IOException {
    float floor = box.top() + box.high();
    double every = hours > 96 ? 24 : hours > 30 ? 12 : hours > 10 ? 4 : 1;
    for (double hour = every; hour < hours; hour += every) {
      pen.line(x(hour), floor - 3, x(hour), floor);
      pen.text(new At(x(hour) - 4, floor + 8, LETTERS), String.valueOf(Math.round(hour)));
    }
  }

  private List<float[]> points(List<CurvePoint> curve) {
    List<float[]> points = new ArrayList<>();
    for (CurvePoint point : curve) {
      points.add(new float[] {x(point.hours()), y(point.celsius())});
    }
    return points;
  }

  private float x(double hour) {
    return box.left() + box.wide() * (float) (hour / hours);
  }

  private float y(double shown) {
    return box.top() + box.high() * (float) (1 - shown / hottest);
  }

  private static double last(List<CurvePoint> curve) {
    return curve.isEmpty() ? 0 : curve.get(curve.size() - 1).hours();
  }

  private static double hottest(List<CurvePoint> curve) {
    return curve.stream().mapToDouble(CurvePoint::celsius).max().orElse(1);
  }
}
