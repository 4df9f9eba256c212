package org.lehrcase.bench.firing;

import com.google.gson.JsonObject;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.glass.heat.HeatExchange;
import org.lehrcase.core.glass.plan.PlanWish;
import org.lehrcase.core.glass.stress.FiringLoad;
import org.lehrcase.core.glass.stress.FiringSimulation;
import org.lehrcase.core.glass.stress.KilnLeg;
import org.lehrcase.core.glass.stress.SimulatedFiring;

/**
 * Evenly hot glass that is blown cold, to hold the model against tempering experiments. No kiln
 * does that.
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

  SimulatedFiring simulate(PlanWish wish) {
    var load = new FiringLoad(wish.glass(), wish.block().slab(), true, fromC);
    var leg =
        new KilnLeg(0, aroundC, aroundC, minutes * 60, Optional.empty(), Optional.of(exchange));
    return FiringSimulation.run(load, List.of(leg));
  }

  /** Puts the result where an answer to a schedule has it. */
  void answer(PlanWish wish, JsonObject answer) {
    SimulatedFiring simulated = simulate(wish);
    answer.add("segments", FiringAnswer.segments(List.of()));
    answer.addProperty("total_h", FiringAnswer.rounded(simulated.hours(), 3));
    answer.add("stress", FiringAnswer.stress(simulated));
  }
}
