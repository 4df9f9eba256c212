package org.lehrcase.bench.plans;

import com.google.gson.JsonObject;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.layers.assign.Scene;
import org.lehrcase.core.layers.outline.Outline;
import org.lehrcase.core.layers.paper.Format;

/**
 * What a kept plan may hold. It may be unfinished, even without a subject: whether it can be
 * planned is asked elsewhere.
 */
public final class PlanShape {
  /** Most octets of a plan. */
  public static final int MOST_BYTES = 1 << 19;

  private static final Pattern ID = Pattern.compile("[0-9a-f]{32}");
  private static final double MOST_MM = 10_000;

  private PlanShape() {}

  /**
   * Checks a plan.
   *
   * @param plan as it came
   * @return its name
   * @throws FieldTrouble naming the first field that cannot be kept
   */
  public static String check(JsonObject plan) throws FieldTrouble {
    if (plan.toString().length() > MOST_BYTES) {
      throw new FieldTrouble("", "a plan has at most 512 KiB; draw with fewer points");
    }
    var fields = new Fields(plan, "");
    fields.number("sheets", 1, 1, Scene.MOST_SHEETS);
    List<Fields> subjects = fields.objects("subjects").orElse(List.of());
    if (subjects.size() > Scene.MOST_SUBJECTS) {
      throw new FieldTrouble("subjects", "must be at most 300, not " + subjects.size());
    }
    for (Fields subject : subjects) {
      checkSubject(subject);
    }
    checkPiece(fields);
    pictureId(plan);
    checkPermission(fields);
    String name = fields.text("name").orElse("").strip();
    return name.isEmpty() ? "My piece" : name;
  }

  private static void checkSubject(Fields subject) throws FieldTrouble {
    if (subject.text("name").orElse("").isBlank()) {
      throw new FieldTrouble(subject.path("name"), "is missing");
    }
    if (subject.isListOf("outline_mm", false)) {
      List<double[]> points = subject.pairs("outline_mm");
      if (points.size() > Outline.MOST_POINTS) {
        throw new FieldTrouble(subject.path("outline_mm"), "has more than 1000 points");
      }
      for (double[] point : points) {
        checkMm(subject.path("outline_mm"), point[0]);
        checkMm(subject.path("outline_mm"), point[1]);
      }
    }
  }

  private static void checkMm(String path, double mm) throws FieldTrouble {
    if (!(Math.abs(mm) <= MOST_MM)) {
      throw new FieldTrouble(path, "must lie within ten metres");
    }
  }

  private static void checkPiece(Fields fields) throws FieldTrouble {
    Optional<Fields> piece = fields.object("piece");
    if (piece.isPresent() && piece.get().has("sheet_mm")) {
      List<Double> size = piece.get().numbers("sheet_mm");
      boolean usable = size.size() == 2 && size.stream().allMatch(mm -> mm >= 10 && mm <= 3000);
      if (!usable) {
        throw new FieldTrouble("piece.sheet_mm", "must be two numbers from 10 to 3000");
      }
    }
  }

  /**
   * Returns the id of the plan's picture.
   *
   * @param plan the plan
   * @throws FieldTrouble if something else stands there
   */
  public static Optional<String> pictureId(JsonObject plan) throws FieldTrouble {
    Optional<Fields> picture = new Fields(plan, "").object("picture");
    if (picture.isEmpty()) {
      return Optional.empty();
    }
    String id = picture.get().text("id").orElse("");
    if (!ID.matcher(id).matches()) {
      throw new FieldTrouble("picture.id", "must be 32 hexadecimal digits");
    }
    List<Double> on = picture.get().numbers("on_mm");
    if (on.size() != 4 || !(on.get(2) > on.get(0)) || !(on.get(3) > on.get(1))) {
      throw new FieldTrouble("picture.on_mm", "must be left, upper, right, lower");
    }
    for (double mm : on) {
      checkMm("picture.on_mm", mm);
    }
    return Optional.of(id);
  }

  /**
   * Says whether the plan's picture has enough pixels for its size on the sheet.
   *
   * @param plan the plan
   * @return good, soft or too_small; empty without a picture
   * @throws FieldTrouble if what stands there is no picture
   */
  public static Optional<String> sharpness(JsonObject plan) throws FieldTrouble {
    Optional<Fields> picture = new Fields(plan, "").object("picture");
    if (pictureId(plan).isEmpty() || picture.isEmpty() || !picture.get().has("pixels")) {
      return Optional.empty();
    }
    List<Double> on = picture.get().numbers("on_mm");
    List<Double> pixels = picture.get().numbers("pixels");
    if (pixels.isEmpty()) {
      return Optional.empty();
    }
    Format.Sharpness found = Format.sharpness(pixels.get(0).intValue(), on.get(2) - on.get(0));
    return Optional.of(found.name().toLowerCase(Locale.ROOT));
  }

  private static void checkPermission(Fields fields) throws FieldTrouble {
    Optional<Fields> permission = fields.object("permission");
    if (permission.isEmpty()) {
      return;
    }
    Fields said = permission.get();
    said.word("ground", "", List.of("", "own", "written", "licence", "public_domain"));
    said.word("use", "", List.of("", "class", "show", "sell", "course"));
    for (String name : List.of("whose", "credit", "note")) {
      said.text(name);
    }
  }
}
