package org.lehrcase.bench.templates;

import com.google.gson.JsonObject;
import java.util.Locale;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.layers.paper.RulerReading;

/** What the rulers of a print tell about the printer. */
public final class RulerAnswer {
  private RulerAnswer() {}

  /**
   * Answers {@code ruler_mm}, the readings across and down.
   *
   * @param request the question
   * @return {@code advice} (good, correct, print_again), {@code words}, and by how much a corrected
   *     print is larger
   * @throws FieldTrouble if nothing can be made of the readings
   */
  public static JsonObject answer(JsonObject request) throws FieldTrouble {
    Optional<RulerReading> read = PaperWish.reading(new Fields(request, ""));
    if (read.isEmpty()) {
      throw new FieldTrouble("ruler_mm", "is missing: what do both rulers read?");
    }
    RulerReading reading = read.get();
    var json = new JsonObject();
    json.addProperty("advice", reading.advice().name().toLowerCase(Locale.ROOT));
    json.addProperty("words", words(reading));
    json.addProperty("larger_across", reading.correction()[0]);
    json.addProperty("larger_down", reading.correction()[1]);
    return json;
  }

  /** Says what was found and what to do, in sentences. */
  static String words(RulerReading reading) {
    String cause = reading.cause().map(c -> " Likely cause: " + c + ".").orElse("");
    return switch (reading.advice()) {
      case GOOD -> "Good enough for glass: within 0.3 %.";
      case CORRECT ->
          "A little off." + cause + " A corrected print makes up for it; lay its rulers on again.";
      case PRINT_AGAIN ->
          "Too far off to be made up for."
              + (cause.isEmpty() ? uneven(reading) : cause)
              + " Print again at 100 % (\"actual size\"), without fitting to the page.";
    };
  }

  private static String uneven(RulerReading reading) {
    return Math.abs(reading.acrossMm() - reading.downMm()) > 1
        ? " The two directions differ: read both rulers once more."
        : " The program or the printer scaled the page.";
  }
}
