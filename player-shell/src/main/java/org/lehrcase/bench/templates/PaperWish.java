package org.lehrcase.bench.templates;

import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.kilns.PaperUnits;
import org.lehrcase.core.layers.paper.Paper;
import org.lehrcase.core.layers.paper.RulerReading;

/**
 * How a paper is wished.
 *
 * @param letter on Letter instead of A4
 * @param mirrored painted from behind
 * @param across by how much the drawing is made wider along the short side of the paper
 * @param down by how much along its long side
 * @param units in which lengths are read
 * @param stamp what stands small in the margin of every page
 */
record PaperWish(
    boolean letter, boolean mirrored, double across, double down, PaperUnits units, String stamp) {
  private static final List<String> SIZES = List.of("A4", "Letter");

  /**
   * Reads the wish.
   *
   * @param request with {@code paper}: {@code size}, {@code mirrored}, {@code length}, {@code
   *     ruler_mm} (what the last print's rulers read)
   * @param stamp what stands in the margin
   * @throws FieldTrouble at {@code paper.ruler_mm} if a print so far off must not be corrected
   */
  static PaperWish read(JsonObject request, String stamp) throws FieldTrouble {
    Fields paper =
        new Fields(request, "").object("paper").orElse(new Fields(new JsonObject(), "paper."));
    double[] larger = {1, 1};
    Optional<RulerReading> reading = reading(paper);
    if (reading.isPresent()) {
      if (reading.get().advice() == RulerReading.Advice.PRINT_AGAIN) {
        throw new FieldTrouble("paper.ruler_mm", RulerAnswer.words(reading.get()));
      }
      larger = reading.get().correction();
    }
    return new PaperWish(
        paper.word("size", "A4", SIZES).equals("Letter"),
        paper.flag("mirrored", false),
        larger[0],
        larger[1],
        PaperUnits.read(request),
        stamp);
  }

  /** Reads what the two rulers of a print read, if that is told. */
  static Optional<RulerReading> reading(Fields paper) throws FieldTrouble {
    if (!paper.has("ruler_mm")) {
      return Optional.empty();
    }
    List<Double> two = paper.numbers("ruler_mm");
    if (two.size() != 2) {
      throw new FieldTrouble(paper.path("ruler_mm"), "must be two numbers: across and down");
    }
    try {
      return Optional.of(new RulerReading(two.get(0), two.get(1)));
    } catch (IllegalArgumentException e) {
      throw new FieldTrouble(paper.path("ruler_mm"), String.valueOf(e.getMessage()));
    }
  }

  Paper paper() {
    return letter ? Paper.LETTER : Paper.A4;
  }

  boolean isCorrected() {
    return across != 1 || down != 1;
  }
}
