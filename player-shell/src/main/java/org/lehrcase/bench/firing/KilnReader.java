package org.lehrcase.bench.firing;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.glass.KilnPace;
import org.lehrcase.core.glass.TemperatureUnit;
import org.lehrcase.core.glass.kiln.Controller;
import org.lehrcase.core.glass.kiln.KilnPower;

/** Reads the kiln of a request. */
final class KilnReader {
  private static final Set<String> CONTROLLER =
      Set.of(
          "unit",
          "highest",
          "slowest_per_h",
          "fastest_per_h",
          "rate_step_per_h",
          "lines",
          "longest_hold_min",
          "free_code");
  private static final Set<String> OTHER =
      Set.of(
          "name",
          "cooling_h",
          "heating_c_per_h",
          "room_c",
          "loss_w_per_k",
          "rated_w",
          "price_per_kwh");

  private KilnReader() {}

  static Set<String> known() {
    Set<String> known = new java.util.TreeSet<>(CONTROLLER);
    known.addAll(OTHER);
    return known;
  }

  static KilnRequest read(Optional<Fields> kiln) throws FieldTrouble {
    if (kiln.isEmpty()) {
      return new KilnRequest(KilnPace.ASSUMED, false, Optional.empty(), Optional.empty(), 0);
    }
    Fields fields = kiln.get();
    var pace =
        new KilnPace(
            fields.number("room_c", KilnPace.ASSUMED.roomC(), -20, 45),
            fields.number("cooling_h", KilnPace.ASSUMED.coolingHours(), 0.1, 200),
            fields.number("heating_c_per_h", KilnPace.ASSUMED.heatingCPerHour(), 10, 3000));
    boolean said = CONTROLLER.stream().anyMatch(fields::has);
    return new KilnRequest(
        pace,
        fields.has("cooling_h"),
        said ? Optional.of(controller(fields)) : Optional.empty(),
        power(fields, pace),
        fields.number("price_per_kwh", 0, 0, 1_000_000));
  }

  private static Controller controller(Fields fields) throws FieldTrouble {
    Controller usual = Controller.ORDINARY;
    TemperatureUnit unit =
        fields.word("unit", "C", List.of("C", "F")).equals("C")
            ? TemperatureUnit.CELSIUS
            : TemperatureUnit.FAHRENHEIT;
    try {
      return new Controller(
          unit,
          fields.number("highest", unit.ofCelsius(usual.highestC())),
          fields.number("slowest_per_h", usual.slowestPerHour()),
          fields.number("fastest_per_h", usual.fastestPerHour()),
          fields.number("rate_step_per_h", usual.ratePerHourStep()),
          fields.whole("lines", usual.lines(), 1, 1000),
          fields.number("longest_hold_min", usual.longestHoldMinutes()),
          fields.text("free_code").orElse(""));
    } catch (IllegalArgumentException e) {
      throw FieldTrouble.of(fields.path(), e);
    }
  }

  private static Optional<KilnPower> power(Fields fields, KilnPace pace) throws FieldTrouble {
    if (!fields.has("loss_w_per_k")) {
      return Optional.empty();
    }
    return Optional.of(
        KilnPower.of(
            fields.number("loss_w_per_k", 0, 0.01, 1000),
            pace.coolingHours(),
            fields.number("rated_w", 10_000, 100, 1_000_000)));
  }
}
