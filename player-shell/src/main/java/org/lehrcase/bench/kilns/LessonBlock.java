package org.lehrcase.bench.kilns;

import com.google.gson.JsonObject;
import java.util.List;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.plan.StatedBlock;

/** The block that a lesson states, as the page begins with it. */
public final class LessonBlock {
  private LessonBlock() {}

  /**
   * Reads a lesson's words.
   *
   * @param words the lesson's block; may be empty
   * @return what was understood; fields that nobody stated are missing
   */
  public static JsonObject json(String words) {
    StatedBlock stated = StatedBlock.parse(words);
    var item = new JsonObject();
    item.addProperty("usable", stated.isUsable());
    stated.sheets().ifPresent(n -> item.addProperty("sheets", n));
    stated.sheetMm().ifPresent(mm -> item.addProperty("sheet_mm", mm));
    stated.fusedMm().ifPresent(mm -> item.addProperty("fused_mm", mm));
    if (stated.widestMm() > 0) {
      item.addProperty("widest_mm", stated.widestMm());
    }
    item.addProperty("faces", stated.faces() == Faces.BOTH ? "both" : "one");
    if (!stated.glassId().isEmpty()) {
      item.addProperty("glass", stated.glassId());
    }
    item.addProperty("problems", String.join("; ", List.copyOf(stated.problems())));
    return item;
  }
}
