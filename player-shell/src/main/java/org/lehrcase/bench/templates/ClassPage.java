package org.lehrcase.bench.templates;

import com.google.gson.JsonElement;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** What a live class of one plan needs, and how many kiln loads its blocks make. */
final class ClassPage {
  private static final double[] SHARES = {0.45, 0.55};

  private ClassPage() {}

  static void add(PiecePlan plan, int pieces, Pages pages) throws IOException {
    var text = new TextPages(pages, "Class of " + pieces + ": " + plan.name());
    var units = pages.wish().units();
    int sheets = plan.sheets().size();
    text.row(List.of("Sheets to cut", pieces + " × " + sheets + " = " + pieces * sheets), SHARES);
    text.row(
        List.of("Size", units.length(plan.widthMm()) + " × " + units.length(plan.heightMm())),
        SHARES);
    double grams = plan.block().get("weight_g").getAsDouble();
    text.row(
        List.of(
            "Glass",
            String.format(
                Locale.ROOT, "%.0f g a block, %.1f kg in all", grams, grams * pieces / 1000)),
        SHARES);
    loads(text, plan, pieces);
    for (JsonElement trouble : plan.block().getAsJsonArray("troubles")) {
      text.paragraph("Look again: " + units.sentence(trouble.getAsString()));
    }
    text.heading("Before the class");
    text.paragraph(
        "Print one template set on the printer that the class will use, and lay a ruler on it."
            + " Every student gets a template set and the cards; jars, dams and kiln wash are"
            + " shared. Cut all sheets from one batch and number them with their student's name.");
    text.paragraph(
        "Fitted masks when powder is sifted or fibre paper is cut, wet wiping, eye protection when"
            + " glass is snapped. Nobody touches the kiln but whoever fires it; its maker's"
            + " instructions come first.");
  }

  private static void loads(TextPages text, PiecePlan plan, int pieces) throws IOException {
    if (!plan.block().has("blocks_per_load")) {
      text.row(List.of("Kiln loads", "type the size of the shelf to know"), SHARES);
      return;
    }
    int each = plan.block().get("blocks_per_load").getAsInt();
    if (each == 0) {
      text.row(List.of("Kiln loads", "not one block with its dams fits on this shelf"), SHARES);
      return;
    }
    int loads = (pieces + each - 1) / each;
    text.row(List.of("Blocks in one load", String.valueOf(each)), SHARES);
    text.row(List.of("Kiln loads for the fuse", String.valueOf(loads)), SHARES);
    text.row(
        List.of("Sets of dams", Math.min(each, pieces) + ", used again from load to load"), SHARES);
  }
}
