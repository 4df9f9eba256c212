package org.lehrcase.bench.layers;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.layers.outline.Box;
import org.lehrcase.core.layers.outline.Outline;
import org.lehrcase.core.layers.outline.Point;

/** Reads what is drawn round a subject: an outline, or a box. */
public final class ShapeReader {
  private ShapeReader() {}

  /**
   * Reads {@code outline_mm} or {@code box_mm}.
   *
   * @param item the subject
   * @return its outline, empty if nothing is drawn
   * @throws FieldTrouble naming the field and the subject
   */
  public static Optional<Outline> outline(Fields item) throws FieldTrouble {
    try {
      if (item.has("outline_mm")) {
        return Optional.of(Outline.of(points(item)));
      }
      if (item.has("box_mm")) {
        List<Double> b = item.numbers("box_mm");
        if (b.size() != 4) {
          throw new FieldTrouble(item.path("box_mm"), "must be [left, upper, right, lower]");
        }
        return Optional.of(Outline.ofBox(new Box(b.get(0), b.get(1), b.get(2), b.get(3))));
      }
      return Optional.empty();
    } catch (IllegalArgumentException e) {
      String field = item.has("outline_mm") ? "outline_mm" : "box_mm";
      String name = item.text("name").orElse("");
      throw new FieldTrouble(item.path(field), name + ": " + e.getMessage());
    }
  }

  /** Points as pairs, or all numbers in one row. */
  private static List<Point> points(Fields item) throws FieldTrouble {
    List<Point> points = new ArrayList<>();
    if (item.isListOf("outline_mm", false)) {
      for (double[] pair : item.pairs("outline_mm")) {
        points.add(new Point(pair[0], pair[1]));
      }
    } else {
      List<Double> row = item.numbers("outline_mm");
      for (int i = 0; i + 1 < row.size(); i += 2) {
        points.add(new Point(row.get(i), row.get(i + 1)));
      }
    }
    boolean closed = points.size() > 3 && points.get(0).equals(points.get(points.size() - 1));
    return closed ? points.subList(0, points.size() - 1) : points;
  }
}
