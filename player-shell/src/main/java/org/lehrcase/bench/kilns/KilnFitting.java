package org.lehrcase.bench.kilns;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.kiln.KilnFit;

/** A kiln's own pace and loss from a few looks at the clock and the display. */
public final class KilnFitting {
  private static final double HOTTEST_C = 1300;
  private static final double LONGEST_HOURS = 1000;

  private KilnFitting() {}

  /**
   * Fits what the readings allow.
   *
   * @param json {@code room_c}, {@code cooling} and {@code heating} as lists of {@code {h, c}},
   *     {@code hold} as {@code {duty, rated_w, hold_c}}; each may be missing
   * @return {@code cooling_h}, {@code heating_c_per_h}, {@code loss_w_per_k}, as far as they follow
   * @throws FieldTrouble naming the field that cannot be used
   */
  public static JsonObject answer(JsonObject json) throws FieldTrouble {
    var fields = new Fields(json, "");
    double roomC = fields.number("room_c", KilnPace.ASSUMED.roomC(), -20, 45);
    var answer = new JsonObject();
    List<KilnFit.Reading> cooling = readings(fields, "cooling");
    List<KilnFit.Reading> heating = readings(fields, "heating");
    try {
      if (!cooling.isEmpty()) {
        answer.addProperty("cooling_h", rounded(KilnFit.coolingHours(cooling, roomC), 100));
      }
    } catch (IllegalArgumentException e) {
      throw new FieldTrouble("cooling", String.valueOf(e.getMessage()));
    }
    try {
      if (!heating.isEmpty()) {
        answer.addProperty("heating_c_per_h", rounded(KilnFit.heatingCPerHour(heating), 1));
      }
    } catch (IllegalArgumentException e) {
      throw new FieldTrouble("heating", String.valueOf(e.getMessage()));
    }
    loss(fields, roomC, answer);
    return answer;
  }

  private static void loss(Fields fields, double roomC, JsonObject answer) throws FieldTrouble {
    Optional<Fields> hold = fields.object("hold");
    if (hold.isEmpty()) {
      return;
    }
    double duty = hold.get().number("duty", Double.NaN, 0.01, 1);
    double rated = hold.get().number("rated_w", Double.NaN, 100, 1_000_000);
    double holdC = hold.get().number("hold_c", Double.NaN, roomC + 10, HOTTEST_C);
    answer.addProperty("loss_w_per_k", rounded(KilnFit.lossWPerK(duty, rated, holdC, roomC), 100));
  }

  private static List<KilnFit.Reading> readings(Fields fields, String name) throws FieldTrouble {
    List<KilnFit.Reading> readings = new ArrayList<>();
    for (Fields one : fields.objects(name).orElse(List.of())) {
      readings.add(
          new KilnFit.Reading(
              one.number("h", Double.NaN, 0, LONGEST_HOURS),
              one.number("c", Double.NaN, -20, HOTTEST_C)));
    }
    return readings;
  }

  private static double rounded(double value, double scale) {
    return Math.rint(value * scale) / scale;
  }
}
