package org.lehrcase.bench.measure;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.Random;
import org.lehrcase.bench.templates.PlanPapers;

/**
 * A full set of papers: 12 sheets of 240 × 180 mm with 60 outlines of 60 corners, once more at 400
 * × 300 mm over 48 pages of A4. Prints the first run of the process and the median of the others.
 */
public final class TemplateBenchmark {
  private static final int SHEETS = 12;
  private static final int SUBJECTS = 60;
  private static final int CORNERS = 60;
  private static final int RUNS = 20;

  private TemplateBenchmark() {}

  /**
   * Measures.
   *
   * @param args none
   * @throws Exception if a paper cannot be made
   */
  public static void main(String[] args) throws Exception {
    for (double width : new double[] {240, 400}) {
      JsonObject request = request(width, width * 3 / 4);
      Figures figures = new Figures();
      for (int run = 0; run <= RUNS; run++) {
        long before = System.nanoTime();
        int bytes = PlanPapers.make(request, "Invented Buyer · license 01234567").bytes().length;
        double millis = (System.nanoTime() - before) / 1e6;
        if (run == 0) {
          System.out.printf("%.0f mm wide: first %.0f ms, %d kB%n", width, millis, bytes / 1000);
        } else {
          figures.add("warm", millis);
        }
      }
      System.out.printf("%.0f mm wide: median %.0f ms%n", width, figures.median("warm"));
    }
  }

  private static JsonObject request(double width, double height) {
    var random = new Random(5);
    var subjects = new JsonArray();
    for (int i = 0; i < SUBJECTS; i++) {
      var one = new JsonObject();
      int sheet = i * SHEETS / SUBJECTS + 1;
      one.addProperty("name", "subject " + i);
      one.addProperty("rank", sheet);
      one.addProperty("planned_on", sheet);
      double slot = width / 5;
      one.add(
          "outline_mm",
          round(slot * (i % 5 + 0.5), height * (0.3 + 0.4 * random.nextDouble()), slot * 0.45));
      subjects.add(one);
    }
    var piece = new JsonObject();
    var size = new JsonArray();
    size.add(width);
    size.add(height);
    piece.add("sheet_mm", size);
    var plan = new JsonObject();
    plan.addProperty("sheets", SHEETS);
    plan.add("subjects", subjects);
    plan.add("piece", piece);
    var request = new JsonObject();
    request.add("plan", plan);
    return request;
  }

  private static JsonArray round(double x, double y, double radius) {
    var corners = new JsonArray();
    for (int i = 0; i < CORNERS; i++) {
      double angle = 2 * Math.PI * i / CORNERS;
      double reach = radius * (i % 2 == 0 ? 1 : 0.8);
      var point = new JsonArray();
      point.add(x + reach * Math.cos(angle));
      point.add(y + reach * Math.sin(angle));
      corners.add(point);
    }
    return corners;
  }
}
