package org.lehrcase.bench.templates;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.layers.LayersService;
import org.lehrcase.bench.layers.ShapeReader;
import org.lehrcase.core.layers.outline.Outline;

/**
 * A plan as its papers need it: what the bench answers, with the outlines that were asked about.
 *
 * @param name what the piece is called
 * @param widthMm of a sheet
 * @param heightMm of a sheet
 * @param thicknessMm of a sheet
 * @param sheets the front first
 * @param subjects in the order of the plan
 * @param block the stack and its dams, as the bench answers
 * @param permission for the reference picture
 */
record PiecePlan(
    String name,
    double widthMm,
    double heightMm,
    double thicknessMm,
    List<Sheet> sheets,
    List<Shape> subjects,
    JsonObject block,
    Optional<Permission> permission) {
  /**
   * One sheet.
   *
   * @param number 1 is the front
   * @param names what is painted on it
   * @param scale painted size, where anything is painted
   * @param contrast what is kept of it
   * @param film how much of a full film
   * @param tones how many
   * @param marginMm paint past an opening
   * @param tuckMm paint on behind an outline on the sheet in front
   */
  record Sheet(
      int number,
      List<String> names,
      OptionalDouble scale,
      OptionalDouble contrast,
      OptionalDouble film,
      int tones,
      double marginMm,
      double tuckMm) {}

  /**
   * One subject.
   *
   * @param name what it is called
   * @param sheet where it lies
   * @param outline as seen from the front; empty where nothing is drawn
   */
  record Shape(String name, int sheet, Optional<Outline> outline) {}

  /**
   * Plans, or says at which field it cannot be done.
   *
   * @param plan a saved plan, or a request for one
   * @throws FieldTrouble naming the field; with the chain of names if there is no plan
   */
  static PiecePlan of(JsonObject plan) throws FieldTrouble {
    Fields asked = new Fields(plan, "");
    Optional<Fields> piece = asked.object("piece");
    if (piece.isEmpty() || !piece.get().has("sheet_mm")) {
      throw new FieldTrouble("piece.sheet_mm", "is missing: how large is one sheet?");
    }
    LayersService.Answer answer = LayersService.answer(plan.toString());
    if (!answer.possible()) {
      throw new FieldTrouble(
          "sheets", answer.json().getAsJsonObject("impossible").get("message").getAsString());
    }
    List<Double> size = piece.get().numbers("sheet_mm");
    return new PiecePlan(
        asked.text("name").filter(n -> !n.isBlank()).orElse("My piece"),
        size.get(0),
        size.get(1),
        piece.get().number("thickness_mm", 3),
        sheets(answer.json().getAsJsonArray("sheet_list")),
        shapes(asked, answer.json().getAsJsonArray("subjects")),
        answer.json().getAsJsonObject("block"),
        Permission.read(asked));
  }

  private static List<Sheet> sheets(JsonArray list) {
    List<Sheet> sheets = new ArrayList<>();
    for (JsonElement element : list) {
      JsonObject one = element.getAsJsonObject();
      List<String> names = new ArrayList<>();
      one.getAsJsonArray("subjects").forEach(n -> names.add(n.getAsString()));
      sheets.add(
          new Sheet(
              one.get("sheet").getAsInt(),
              names,
              number(one, "scale"),
              number(one, "contrast"),
              number(one, "film"),
              (int) number(one, "tones").orElse(0),
              number(one, "margin_mm").orElse(0),
              number(one, "tuck_under_mm").orElse(0)));
    }
    return sheets;
  }

  private static OptionalDouble number(JsonObject from, String name) {
    return from.has(name)
        ? OptionalDouble.of(from.get(name).getAsDouble())
        : OptionalDouble.empty();
  }

  private static List<Shape> shapes(Fields asked, JsonArray found) throws FieldTrouble {
    List<Fields> items = asked.objects("subjects").orElse(List.of());
    List<Shape> shapes = new ArrayList<>();
    for (int i = 0; i < items.size(); i++) {
      JsonObject one = found.get(i).getAsJsonObject();
      Optional<Outline> outline = ShapeReader.outline(items.get(i));
      shapes.add(new Shape(one.get("name").getAsString(), one.get("sheet").getAsInt(), outline));
    }
    return shapes;
  }

  /** Returns what is drawn on a sheet. */
  List<Shape> on(int sheet) {
    return subjects.stream().filter(s -> s.sheet() == sheet && s.outline().isPresent()).toList();
  }

  /** Returns the next sheet in front of one on which anything is drawn; 0 if there is none. */
  int paintedInFrontOf(int sheet) {
    int front = sheet - 1;
    while (front > 0 && on(front).isEmpty()) {
      front--;
    }
    return front;
  }

  /** Returns how far paint goes on behind the outlines of the painted sheet in front of one. */
  double tuckMm(int sheet) {
    return sheets.get(sheet - 1).tuckMm() * (sheet - paintedInFrontOf(sheet));
  }

  boolean isClassOnly() {
    return permission.map(Permission::isClassOnly).orElse(false);
  }
}
