package org.lehrcase.bench.firing;

import com.google.gson.JsonArray;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.OptionalDouble;
import org.lehrcase.core.glass.kiln.FittedPlan;
import org.lehrcase.core.glass.kiln.TypedLine;
import org.lehrcase.core.glass.plan.Anneal;
import org.lehrcase.core.glass.plan.PlannedSegment;
import org.lehrcase.core.glass.say.Phrase;
import org.lehrcase.core.glass.stress.KilnPath;
import org.lehrcase.core.glass.stress.LayerSample;
import org.lehrcase.core.glass.stress.PeakTension;
import org.lehrcase.core.glass.stress.Relaxation;
import org.lehrcase.core.glass.stress.SimulatedFiring;
import org.lehrcase.core.glass.stress.StressOutcome;
import org.lehrcase.core.glass.stress.Support;

/** Puts plans and stresses into JSON; figures are rounded to what they are worth. */
final class FiringAnswer {
  private FiringAnswer() {}

  static JsonArray segments(List<PlannedSegment> lines) {
    var array = new JsonArray();
    for (PlannedSegment line : lines) {
      var item = new JsonObject();
      item.addProperty("name", line.segment().name());
      addRate(item, line.segment().rateCPerHour());
      item.addProperty("target_c", rounded(line.segment().targetC().orElse(0), 1));
      item.addProperty("hold_min", rounded(line.segment().holdMinutes(), 0));
      item.addProperty("limited_by", line.limitedBy());
      item.addProperty("note", line.segment().note());
      array.add(item);
    }
    return array;
  }

  private static void addRate(JsonObject item, OptionalDouble rate) {
    if (rate.isPresent()) {
      item.addProperty("rate_c_per_h", rounded(rate.getAsDouble(), 3));
    } else {
      item.add("rate_c_per_h", JsonNull.INSTANCE);
    }
  }

  /** What is typed into the controller, what was changed for it, or why it cannot run it. */
  static JsonObject controller(FittedPlan fitted) {
    var item = new JsonObject();
    var typed = new JsonArray();
    for (TypedLine line : fitted.typed()) {
      var row = new JsonObject();
      row.addProperty("line", line.number());
      row.addProperty("name", line.name());
      row.addProperty("rate", line.rate());
      row.addProperty("target", line.target());
      row.addProperty("hold", line.hold());
      typed.add(row);
    }
    item.add("type_in", typed);
    var changes = new JsonArray();
    fitted.changes().forEach(changes::add);
    item.add("changes", changes);
    item.addProperty("refused", fitted.refusal().map(Phrase::text).orElse(null));
    return item;
  }

  /**
   * When each line begins, arrives and ends, and the block then; lines behind the last are the
   * kiln's own way down.
   */
  static JsonArray times(List<KilnPath.LineTime> times, SimulatedFiring simulated) {
    var array = new JsonArray();
    for (KilnPath.LineTime time : times) {
      var item = new JsonObject();
      item.addProperty("segment", time.line() + 1);
      item.addProperty("start_h", rounded(time.startHours(), 3));
      item.addProperty("arrival_h", rounded(time.arrivalHours(), 3));
      item.addProperty("end_h", rounded(time.endHours(), 3));
      item.addProperty("end_c", rounded(time.endC(), 1));
      block(item, simulated.at(time.endHours()));
      array.add(item);
    }
    return array;
  }

  /** Temperature and stress of core and surface, with structural relaxation, held flat. */
  private static void block(JsonObject item, LayerSample sample) {
    item.addProperty("core_c", rounded(sample.coreC(), 1));
    item.addProperty("surface_c", rounded(sample.faceC(), 1));
    item.addProperty("core_mpa", rounded(sample.coreMpa(), 3));
    item.addProperty("surface_mpa", rounded(sample.faceMpa(), 3));
  }

  static JsonObject anneal(Anneal anneal) {
    var item = new JsonObject();
    item.addProperty("soak_c", rounded(anneal.soakC(), 1));
    item.addProperty("soak_h", rounded(anneal.soakHours(), 3));
    var rates = new JsonArray();
    anneal.ratesCPerHour().forEach(r -> rates.add(rounded(r, 3)));
    item.add("rates_c_per_h", rates);
    var ends = new JsonArray();
    anneal.endsC().forEach(e -> ends.add(rounded(e, 1)));
    item.add("ends_c", ends);
    item.addProperty("soak_limited_by", anneal.soakLimit().words());
    return item;
  }

  /** The first two figures are those to show first; the others say how they depend on the view. */
  static JsonObject stress(SimulatedFiring simulated) {
    var item = new JsonObject();
    item.addProperty("peak_temporary_mpa", rounded(simulated.main().peak().mpa(), 3));
    item.addProperty("residual_core_mpa", rounded(simulated.main().residualCoreMpa(), 3));
    item.addProperty("residual_surface_mpa", rounded(simulated.main().residualFaceMpa(), 3));
    item.add("peak_heating", peak(simulated.main().heating()));
    item.add("peak_cooling", peak(simulated.main().cooling()));
    item.add("with_structural_relaxation", view(simulated, Relaxation.STRUCTURAL));
    item.add("without_structural_relaxation", view(simulated, Relaxation.PLAIN));
    return item;
  }

  private static JsonObject view(SimulatedFiring simulated, Relaxation relaxation) {
    JsonObject item = figures(simulated.outcome(relaxation, Support.HELD_FLAT));
    item.add("free_to_bow", figures(simulated.outcome(relaxation, Support.FREE_TO_BOW)));
    return item;
  }

  private static JsonObject figures(StressOutcome outcome) {
    var item = new JsonObject();
    item.addProperty("peak_temporary_mpa", rounded(outcome.peak().mpa(), 3));
    item.addProperty("residual_core_mpa", rounded(outcome.residualCoreMpa(), 3));
    item.addProperty("residual_surface_mpa", rounded(outcome.residualFaceMpa(), 3));
    return item;
  }

  private static JsonObject peak(PeakTension peak) {
    var item = new JsonObject();
    item.addProperty("mpa", rounded(peak.mpa(), 3));
    item.addProperty("below_top_mm", rounded(peak.depthMm(), 1));
    item.addProperty("after_h", rounded(peak.hours(), 2));
    item.addProperty("kiln_c", rounded(peak.kilnC(), 0));
    item.addProperty("segment", peak.line() + 1);
    return item;
  }

  static double rounded(double value, int digits) {
    double scale = Math.pow(10, digits);
    return Math.rint(value * scale) / scale;
  }
}
