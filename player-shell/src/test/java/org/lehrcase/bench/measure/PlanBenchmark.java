package org.lehrcase.bench.measure;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.lehrcase.bench.layers.LayersService;
import org.lehrcase.bench.picture.CleanPicture;
import org.lehrcase.bench.picture.MadePictures;
import org.lehrcase.bench.picture.PictureWorkshop;

/**
 * How long a plan takes, a plan while a mark is dragged, and a picture of 48 million pixels. No
 * test: run it by hand, on a quiet machine.
 */
public final class PlanBenchmark {
  private static final int ROUNDS = 40;
  private static final int WARM_UP = 60;
  private static final int PICTURES = 5;

  private final PrintStream out;

  private PlanBenchmark(PrintStream out) {
    this.out = out;
  }

  /**
   * Measures and prints.
   *
   * @param arguments none
   * @throws Exception if anything cannot be run
   */
  public static void main(String[] arguments) throws Exception {
    var benchmark = new PlanBenchmark(new PrintStream(System.out, true, StandardCharsets.UTF_8));
    benchmark.plans(200, 12, false);
    benchmark.plans(30, 8, true);
    benchmark.plans(200, 12, true);
    benchmark.pictures();
  }

  /** Texts in, texts out, as the page has it. */
  private void plans(int subjects, int sheets, boolean dragged) throws Exception {
    String request = scene(subjects, sheets, dragged).toString();
    double[] millis = new double[ROUNDS];
    boolean possible = false;
    for (int round = -WARM_UP; round < ROUNDS; round++) {
      long began = System.nanoTime();
      possible = LayersService.answer(request).possible();
      if (round >= 0) {
        millis[round] = (System.nanoTime() - began) / 1e6;
      }
    }
    say(subjects + " subjects, " + sheets + " sheets, " + (dragged ? "one held" : "free"), millis);
    out.println("  possible: " + possible);
  }

  private void pictures() throws Exception {
    byte[] file = MadePictures.file(noise(8000, 6000), "jpeg");
    var workshop = new PictureWorkshop();
    double[] millis = new double[PICTURES];
    for (int round = 0; round < PICTURES; round++) {
      long began = System.nanoTime();
      CleanPicture clean = workshop.clean(new ByteArrayInputStream(file));
      millis[round] = (System.nanoTime() - began) / 1e6;
      if (clean.width() != 2560) {
        throw new IllegalStateException("not made smaller");
      }
    }
    say("8000 × 6000 JPEG of " + file.length / 1_000_000 + " MB, process and all", millis);
  }

  private void say(String what, double[] millis) {
    Arrays.sort(millis);
    out.printf(
        "%s: median %.1f ms, most %.1f ms%n",
        what, millis[millis.length / 2], millis[millis.length - 1]);
  }

  /** Soft shapes with some grain, as a photograph has. */
  private static BufferedImage noise(int width, int height) {
    var random = new SplittableRandom(48);
    var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        int value =
            (int) (128 + 90 * Math.sin(x / 311.0) * Math.cos(y / 173.0)) + random.nextInt(14);
        image.setRGB(x, y, value << 16 | (value * 3 / 4) << 8 | value / 2);
      }
    }
    return image;
  }

  /** Outlines of twelve corners, strewn over the sheet; each hides what lies under it. */
  private static JsonObject scene(int subjects, int sheets, boolean dragged) {
    var random = new SplittableRandom(7 + subjects);
    var list = new JsonArray();
    for (int i = 0; i < subjects; i++) {
      double row = (double) i / subjects;
      double x = 20 + random.nextDouble() * 1600;
      double y = 20 + random.nextDouble() * 900;
      var one = new JsonObject();
      one.addProperty("name", "subject " + i);
      one.addProperty("depth", row * 4);
      one.add("outline_mm", round(x, y, 8 + 12 * random.nextDouble()));
      if (dragged && i == subjects / 2) {
        one.addProperty("pin", sheets / 2);
      }
      list.add(one);
    }
    var request = new JsonObject();
    request.addProperty("sheets", sheets);
    request.add("subjects", list);
    return request;
  }

  private static JsonArray round(double x, double y, double radius) {
    var outline = new JsonArray();
    for (int corner = 0; corner < 12; corner++) {
      double angle = 2 * Math.PI * corner / 12;
      var point = new JsonArray();
      point.add(x + radius * Math.cos(angle));
      point.add(y + radius * Math.sin(angle));
      outline.add(point);
    }
    return outline;
  }
}
