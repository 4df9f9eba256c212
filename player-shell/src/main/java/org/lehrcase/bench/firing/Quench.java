package org.lehrcase.bench.firing;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.glass.heat.HeatExchange;
import org.lehrcase.core.glass.plan.PlanWish;
import org.lehrcase.core.glass.stress.FiringLoad;
import org.lehrcase.core.glass.stress.FiringSimulation;
import org.lehrcase.core.glass.stress.KilnLeg;
import org.lehrcase.core.glass.stress.KilnPath;
import org.lehrcase.core.glass.stress.KilnPath.LineTime;
import org.lehrcase.core.glass.stress.SimulatedFiring;

/**
 * Evenly hot glass that is blown cold, to hold the model against tempering experiments; with lines
 * behind it, against experiments in which such glass is annealed again. No kiln does that.
 *
 * @param fromC temperature throughout at the start
 * @param aroundC the air
 * @param exchange what passes between face and air for each kelvin, all in all
 * @param minutes how long
 */
record Quench(double fromC, double aroundC, HeatExchange exchange, double minutes) {
  static final Set<String> KNOWN = Set.of("from_c", "around_c", "exchange_w_per_m2_k", "minutes");

  static Optional<Quench> read(Fields request) throws FieldTrouble {
    Optional<Fields> fields = request.object("quench");
    if (fields.isEmpty()) {
      return Optional.empty();
    }
    Fields of = fields.get();
    return Optional.of(
        new Quench(
            of.number("from_c", Double.NaN, 100, 1200),
            of.number("around_c", 20, -50, 600),
            new HeatExchange(of.number("exchange_w_per_m2_k", Double.NaN, 0.1, 20_000), 0),
            of.number("minutes", 30, 0.01, 10_000)));
  }

  /**
   * Blows the glass, then runs whatever lines follow from the temperature of the air, in a kiln
   * that holds every rate unless its own is known.
   */
  private KilnPath.Path path(FiringRequest request) {
    var blow =
        new KilnLeg(0, aroundC, aroundC, minutes * 60, Optional.empty(), Optional.of(exchange));
    List<KilnLeg> legs = new ArrayList<>(List.of(blow));
    double hours = minutes / 60;
    List<LineTime> times = new ArrayList<>(List.of(new LineTime(0, 0, 0, hours, aroundC)));
    var end = new KilnPath.End(Double.MAX_VALUE, 0, !request.kiln().paceGiven());
    KilnPath.Path after = KilnPath.of(request.segments(), request.kiln().pace(), aroundC, end);
    for (KilnLeg leg : after.legs()) {
      legs.add(
          new KilnLeg(
              leg.line() + 1,
              leg.fromC(),
              leg.toC(),
              leg.seconds(),
              leg.settling(),
              leg.exchange()));
    }
    for (LineTime time : after.times()) {
      times.add(
          new LineTime(
              time.line() + 1,
              time.startHours() + hours,
              time.arrivalHours() + hours,
              time.endHours() + hours,
              time.endC()));
    }
    return new KilnPath.Path(legs, times);
  }

  /** Puts the result where an answer to a schedule has it. */
  void answer(FiringRequest request, JsonObject answer) {
    PlanWish wish = request.wish();
    KilnPath.Path path = path(request);
    var load = new FiringLoad(wish.glass(), wish.block().slab(), true, fromC);
    SimulatedFiring simulated = FiringSimulation.run(load, path.legs());
    answer.add("segments", FiringAnswer.segments(ComputedFiring.typedIn(request)));
    answer.addProperty("total_h", FiringAnswer.rounded(simulated.hours(), 3));
    answer.add("times", FiringAnswer.times(path.times(), simulated));
    answer.add("stress", FiringAnswer.stress(simulated));
  }
}
