package org.lehrcase.bench.kilns;

import java.util.Optional;
import org.lehrcase.bench.firing.ComputedFiring;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.glass.say.Figure;
import org.lehrcase.core.glass.say.Units;

/**
 * What is in the kiln, in one sentence for a paper.
 *
 * @param sheet the kiln sheet
 * @param units whoever reads it
 */
record BlockFacts(KilnSheet sheet, Units units) {
  /**
   * Returns block, glass and kiln.
   *
   * @param wish the paper, with the names of {@code glass} and {@code kiln}
   * @throws FieldTrouble naming the field that cannot be used
   */
  String words(Fields wish) throws FieldTrouble {
    ComputedFiring mine = sheet.mine();
    String faces =
        switch (mine.block().faces()) {
          case ONE -> "cools from the top only";
          case BOTH -> "cools from top and bottom";
        };
    return "Block: "
        + Figure.length(mine.block().thicknessMm()).in(units)
        + " when fused"
        + stack()
        + ", "
        + faces
        + weight()
        + ". Glass: "
        + wish.text("glass").orElse("as described")
        + ". Kiln: "
        + wish.text("kiln").orElse("an ordinary kiln")
        + ".";
  }

  private String weight() throws FieldTrouble {
    double kilograms = sheet.weight();
    return kilograms > 0 ? ", " + Figure.number(kilograms, 1).in(units) + " kg of glass" : "";
  }

  /** The sheets that were counted; nothing if the block was weighed or measured. */
  private String stack() throws FieldTrouble {
    Optional<Fields> stack = new Fields(sheet.request(), "").object("stack");
    boolean counted = stack.isPresent() && stack.get().has("sheets") && stack.get().has("sheet_mm");
    if (!counted) {
      return "";
    }
    long sheets = Math.round(stack.get().number("sheets", 0));
    Figure thick = Figure.length(stack.get().number("sheet_mm", 0));
    return ", of " + sheets + (sheets == 1 ? " sheet of " : " sheets of ") + thick.in(units);
  }
}
