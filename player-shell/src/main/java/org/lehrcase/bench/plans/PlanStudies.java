package org.lehrcase.bench.plans;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.bench.layers.LayersService;
import org.lehrcase.bench.picture.ToneStudy;

/** The value study of each sheet's own subjects, fewer tones the farther back. */
public final class PlanStudies {
  /** What a brush can hold: regions smaller than this each way are given away. */
  private static final double LEAST_MM = 2;

  private static final int CORNERS = 4;

  private final JsonObject plan;
  private final double left;
  private final double upper;
  private final double width;
  private final double height;

  private PlanStudies(JsonObject plan) throws FieldTrouble {
    this.plan = plan;
    List<Double> on =
        new Fields(plan, "")
            .object("picture")
            .orElseThrow(() -> new FieldTrouble("picture", "is missing"))
            .numbers("on_mm");
    if (on.size() != CORNERS || !(on.get(2) > on.get(0)) || !(on.get(3) > on.get(1))) {
      throw new FieldTrouble("picture.on_mm", "must be left, upper, right, lower");
    }
    this.left = on.get(0);
    this.upper = on.get(1);
    this.width = on.get(2) - left;
    this.height = on.get(3) - upper;
  }

  /**
   * Makes the studies of a plan.
   *
   * @param plan a plan with a picture
   * @param jpeg that picture
   * @return {@code sheets}: number, tones, bins of the thresholds, and the study as a data address
   * @throws FieldTrouble if the plan cannot be planned
   * @throws IOException if the picture cannot be read
   */
  public static JsonObject of(JsonObject plan, byte[] jpeg) throws FieldTrouble, IOException {
    var studies = new PlanStudies(plan);
    LayersService.Answer answer = LayersService.answer(plan.toString());
    var json = new JsonObject();
    json.add("sheets", answer.possible() ? studies.sheets(answer.json(), jpeg) : new JsonArray());
    return json;
  }

  private JsonArray sheets(JsonObject answer, byte[] jpeg) throws FieldTrouble, IOException {
    Map<String, List<double[]>> outlines = outlines();
    ToneStudy picture = ToneStudy.of(jpeg);
    var list = new JsonArray();
    for (JsonElement element : answer.getAsJsonArray("sheet_list")) {
      JsonObject sheet = element.getAsJsonObject();
      List<List<double[]>> own = new ArrayList<>();
      for (JsonElement name : sheet.getAsJsonArray("subjects")) {
        own.add(outlines.getOrDefault(name.getAsString(), List.of()));
      }
      own.removeIf(List::isEmpty);
      if (!own.isEmpty()) {
        study(picture, sheet, own).ifPresent(list::add);
      }
    }
    return list;
  }

  private Optional<JsonObject> study(
      ToneStudy picture, JsonObject sheet, List<List<double[]>> own) {
    int tones = sheet.get("tones").getAsInt();
    var wish = new ToneStudy.Wish(own, tones, sheet.get("contrast").getAsDouble());
    ToneStudy.Study made;
    try {
      made = picture.study(wish, LEAST_MM / width);
    } catch (IllegalArgumentException nothingInside) {
      return Optional.empty(); // drawn beside the picture
    }
    var one = new JsonObject();
    one.add("sheet", sheet.get("sheet"));
    one.addProperty("tones", made.study().means().size());
    var thresholds = new JsonArray();
    made.study().thresholds().forEach(thresholds::add);
    one.add("thresholds", thresholds);
    String png = Base64.getEncoder().encodeToString(made.png());
    one.addProperty("png", "data:image/png;base64," + png);
    return Optional.of(one);
  }

  /** Outlines by name, as shares of the picture. */
  private Map<String, List<double[]>> outlines() throws FieldTrouble {
    Map<String, List<double[]>> outlines = new HashMap<>();
    for (Fields subject : new Fields(plan, "").objects("subjects").orElse(List.of())) {
      List<double[]> shares = new ArrayList<>();
      if (subject.isListOf("outline_mm", false)) {
        for (double[] point : subject.pairs("outline_mm")) {
          shares.add(new double[] {(point[0] - left) / width, (point[1] - upper) / height});
        }
      }
      outlines.put(subject.text("name").orElse("").strip(), shares);
    }
    return outlines;
  }
}
