package org.lehrcase.bench.kilns;

import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.glass.plan.StackVolume;

/**
 * Reads how the block comes about, and turns it into one thickness: by counting sheets, by volume
 * between dams, by weighing, or as it was measured.
 */
final class StackReader {
  private static final String STACK = "stack";
  private static final double DENSITY_KG_PER_M3 = 2500;
  private static final double HOT_DENSITY_KG_PER_M3 = 2400;
  private static final double CONTACT_DEGREES = 150;

  private StackReader() {}

  /**
   * Puts {@code thickness_mm} and {@code widest_mm} into a request that describes a stack.
   *
   * @param request the page's request; {@code stack} is taken out of a copy
   * @return what the firing reads
   */
  static JsonObject resolved(JsonObject request) throws FieldTrouble {
    Optional<Fields> stack = new Fields(request, "").object(STACK);
    JsonObject plain = request.deepCopy();
    plain.remove(STACK);
    if (stack.isPresent()) {
      plain.addProperty("thickness_mm", thicknessMm(stack.get()));
      double widest = widestMm(stack.get());
      if (widest > 0) {
        plain.addProperty("widest_mm", widest);
      }
    }
    return plain;
  }

  private static double thicknessMm(Fields stack) throws FieldTrouble {
    String by = stack.word("by", "sheets", List.of("sheets", "volume", "weight", "measured"));
    return switch (by) {
      case "volume" -> volume(stack);
      case "weight" -> weight(stack);
      case "measured" -> stack.number("measured_mm", Double.NaN, 1, 300);
      default -> sheets(stack) * stack.number("sheet_mm", 3, 0.5, 25);
    };
  }

  private static int sheets(Fields stack) throws FieldTrouble {
    double sheets = stack.number("sheets", Double.NaN, 1, 200);
    if (sheets != Math.rint(sheets)) {
      throw new FieldTrouble(stack.path("sheets"), "must be a whole number");
    }
    return (int) sheets;
  }

  private static double volume(Fields stack) throws FieldTrouble {
    int sheets = sheets(stack);
    double sheetMm = stack.number("sheet_mm", 3, 0.5, 25);
    double length = stack.number("sheet_length_mm", Double.NaN, 10, 3000);
    double width = stack.number("sheet_width_mm", Double.NaN, 10, 3000);
    return StackVolume.ofSheets(sheets, sheetMm, length * width, bed(stack));
  }

  private static double weight(Fields stack) throws FieldTrouble {
    double grams = stack.number("grams", Double.NaN, 1, 500_000);
    return StackVolume.ofWeight(grams, DENSITY_KG_PER_M3, bed(stack));
  }

  private static StackVolume.Bed bed(Fields stack) throws FieldTrouble {
    double length = stack.number("bed_length_mm", Double.NaN, 10, 3000);
    double width = stack.number("bed_width_mm", Double.NaN, 10, 3000);
    double liner = stack.number("liner_mm", 0, 0, 25);
    try {
      return new StackVolume.Bed(length, width, liner);
    } catch (IllegalArgumentException e) {
      throw new FieldTrouble(stack.path("liner_mm"), String.valueOf(e.getMessage()));
    }
  }

  private static double widestMm(Fields stack) throws FieldTrouble {
    double longest = 0;
    for (String side :
        List.of("bed_length_mm", "bed_width_mm", "sheet_length_mm", "sheet_width_mm")) {
      longest = Math.max(longest, stack.number(side, 0));
    }
    return longest;
  }

  /** Returns how thick glass stays without dams, mm. */
  static double puddleMm() {
    return StackVolume.puddleMm(HOT_DENSITY_KG_PER_M3, CONTACT_DEGREES);
  }

  /** Returns the weight of a block, kg; 0 if its floor is not known. */
  static double kilograms(JsonObject request, double thicknessMm) throws FieldTrouble {
    Optional<Fields> stack = new Fields(request, "").object(STACK);
    if (stack.isEmpty()) {
      return 0;
    }
    double length = stack.get().number("bed_length_mm", stack.get().number("sheet_length_mm", 0));
    double width = stack.get().number("bed_width_mm", stack.get().number("sheet_width_mm", 0));
    return length * width * thicknessMm * DENSITY_KG_PER_M3 / 1e9;
  }
}
