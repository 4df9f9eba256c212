package org.lehrcase.bench.kilns;

import com.google.gson.JsonObject;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import org.lehrcase.bench.firing.ComputedFiring;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.Fields;
import org.lehrcase.core.glass.kiln.EnergyUse;
import org.lehrcase.core.glass.kiln.KilnPower;
import org.lehrcase.core.glass.kiln.Tariff;

/** What a firing uses and costs, by the hour of the day. */
final class SheetEnergy {
  private SheetEnergy() {}

  /** Returns the energy; empty if nobody knows what the kiln loses. */
  static Optional<JsonObject> of(JsonObject request, ComputedFiring firing, ZonedDateTime start)
      throws FieldTrouble {
    Tariff tariff = tariff(new Fields(request, ""));
    Optional<KilnPower> power = firing.kiln().power();
    if (power.isEmpty()) {
      return Optional.empty();
    }
    var setting = new EnergyUse.Setting(power.get(), firing.kiln().pace().roomC(), start, tariff);
    EnergyUse use = EnergyUse.of(firing.reviewed().path().legs(), setting);
    var item = new JsonObject();
    item.addProperty("kwh", Math.rint(use.kilowattHours() * 10) / 10);
    item.addProperty("cost", Math.rint(use.cost() * 100) / 100);
    item.addProperty("currency", tariff.currency());
    double hours = firing.reviewed().totalHours();
    item.addProperty("rated_times_hours_kwh", Math.rint(power.get().ratedW() * hours / 1000));
    item.addProperty("asked_too_much", use.askedTooMuch());
    return Optional.of(item);
  }

  private static Tariff tariff(Fields request) throws FieldTrouble {
    Optional<Fields> of = request.object("tariff");
    if (of.isEmpty()) {
      return Tariff.flat("", 0);
    }
    String currency = of.get().text("currency").orElse("");
    List<Double> prices = of.get().numbers("per_kwh");
    try {
      return new Tariff(currency, prices);
    } catch (IllegalArgumentException e) {
      throw new FieldTrouble(of.get().path("per_kwh"), String.valueOf(e.getMessage()));
    }
  }
}
