package org.lehrcase.bench.templates;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.List;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.kilns.MadePapers.Made;
import org.lehrcase.bench.printing.PaperBook;

/** Makes the papers of a plan as one PDF. */
public final class PlanPapers {
  private static final List<String> KINDS =
      List.of("ruler", "plan", "templates", "cut", "dams", "cards", "shopping", "class");

  /** A printer's tray holds less; a class of more prints one set and copies it. */
  private static final int MOST_PAGES = 600;

  private static final int LARGEST_CLASS = 60;

  private PlanPapers() {}

  /**
   * Makes a paper.
   *
   * @param request {@code plan} as {@code layers} takes it; {@code cut} as {@code cut} takes it, if
   *     a cut list is wished; {@code paper} with {@code kinds}, {@code size}, {@code mirrored},
   *     {@code length}, {@code ruler_mm}
   * @param stamp what stands small in the margin of every page
   * @return the PDF
   * @throws FieldTrouble naming the field that cannot be used
   * @throws IOException if the program is incomplete
   */
  public static Made make(JsonObject request, String stamp) throws FieldTrouble, IOException {
    Fields asked = new Fields(request, "");
    PaperWish wish = PaperWish.read(request, stamp);
    List<String> kinds = kinds(asked);
    if (kinds.equals(List.of("ruler"))) {
      return pdf("Ruler page", wish, RulerPage::add);
    }
    if (asked.object("plan").isEmpty()) {
      throw new FieldTrouble("plan", "is missing: open a plan first");
    }
    PiecePlan plan = PiecePlan.of(request.getAsJsonObject("plan"));
    String name = kinds.size() == 1 ? plan.name() + ", " + kinds.get(0) : plan.name();
    int copies = copies(asked);
    return pdf(name, wish, pages -> fill(new Filling(plan, kinds, request, copies), pages));
  }

  private record Filling(PiecePlan plan, List<String> kinds, JsonObject request, int copies) {}

  private static int copies(Fields asked) throws FieldTrouble {
    Fields paper = asked.object("paper").orElse(new Fields(new JsonObject(), "paper."));
    return (int) paper.number("copies", 1, 1, LARGEST_CLASS);
  }

  /** Draws pages. */
  interface Drawing {
    void on(Pages pages) throws FieldTrouble, IOException;
  }

  static Made pdf(String title, PaperWish wish, Drawing drawing) throws FieldTrouble, IOException {
    try (PaperBook book = new PaperBook(title)) {
      drawing.on(new Pages(book, wish));
      return new Made(title + ".pdf", "application/pdf", book.stamped(wish.stamp()));
    }
  }

  private static List<String> kinds(Fields asked) throws FieldTrouble {
    Fields paper = asked.object("paper").orElse(new Fields(new JsonObject(), "paper."));
    List<String> kinds = paper.texts("kinds");
    for (String kind : kinds) {
      if (!KINDS.contains(kind)) {
        throw new FieldTrouble(paper.path("kinds"), "must be some of: " + String.join(", ", KINDS));
      }
    }
    return kinds.isEmpty() ? List.of("ruler", "plan", "templates", "dams", "cards") : kinds;
  }

  private static void fill(Filling wish, Pages pages) throws FieldTrouble, IOException {
    for (String kind : wish.kinds()) {
      switch (kind) {
        case "ruler" -> RulerPage.add(pages);
        case "plan" -> new PlanPage(wish.plan(), pages).add();
        case "templates" -> templates(wish, pages);
        case "dams" -> new DamPage(wish.plan(), pages).add();
        case "cards" -> cards(wish, pages);
        case "shopping" -> ShoppingPages.add(part(wish.request(), "supplies"), pages);
        case "class" -> ClassPage.add(wish.plan(), wish.copies(), pages);
        default -> CutPages.add(part(wish.request(), "cut"), pages);
      }
    }
  }

  /** A set for each student, one after the other. */
  private static void templates(Filling wish, Pages pages) throws FieldTrouble, IOException {
    var one = new SheetTemplates(wish.plan(), pages);
    int count = one.tiling().pages() * wish.plan().sheets().size() * wish.copies();
    if (count > MOST_PAGES) {
      throw new FieldTrouble(
          "paper.copies",
          "makes "
              + count
              + " pages of templates, more than "
              + MOST_PAGES
              + ": save one set and"
              + " copy it");
    }
    for (int copy = 0; copy < wish.copies(); copy++) {
      one.all();
    }
  }

  private static void cards(Filling wish, Pages pages) throws IOException {
    for (int copy = 0; copy < wish.copies(); copy++) {
      new CardPages(wish.plan(), pages).all();
    }
  }

  private static JsonObject part(JsonObject request, String name) throws FieldTrouble {
    if (new Fields(request, "").object(name).isEmpty()) {
      throw new FieldTrouble(name, "is missing");
    }
    return request.getAsJsonObject(name);
  }
}
