package org.lehrcase.bench.kilns;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.List;
import org.lehrcase.bench.firing.ComputedFiring;
import org.lehrcase.core.glass.heat.Faces;
import org.lehrcase.core.glass.kind.Viscosity;
import org.lehrcase.core.glass.plan.AnnealRule;
import org.lehrcase.core.glass.stress.LayerSample;

/** The block over time, layer by layer, for drawing. */
final class InsideMap {
  /** Layers that a map shows; every second one of the simulation. */
  private static final int EVERY = 2;

  private InsideMap() {}

  static JsonObject json(ComputedFiring firing) {
    var item = new JsonObject();
    boolean both = firing.block().faces() == Faces.BOTH;
    item.addProperty("both_faces", both);
    item.addProperty("thickness_mm", firing.block().thicknessMm());
    var hours = new JsonArray();
    var kiln = new JsonArray();
    var celsius = new JsonArray();
    var stress = new JsonArray();
    for (LayerSample sample : firing.reviewed().simulated().samples()) {
      hours.add(rounded(sample.hours(), 1000));
      kiln.add(rounded(sample.kilnC(), 10));
      celsius.add(layers(sample.celsius(), 10));
      stress.add(layers(sample.stressMpa(), 1000));
    }
    item.add("hours", hours);
    item.add("kiln_c", kiln);
    item.add("celsius", celsius);
    item.add("stress_mpa", stress);
    Viscosity viscosity = firing.plan().wish().glass().viscosity();
    item.addProperty("strain_c", rounded(viscosity.strainC(), 1));
    item.addProperty("annealing_c", rounded(viscosity.annealingC(), 1));
    double factor = firing.plan().wish().level().factor();
    item.addProperty("limit_mpa", rounded(AnnealRule.SURFACE_MPA * factor, 100));
    return item;
  }

  /** From the top face down to the deepest layer. */
  private static JsonArray layers(List<Double> fromDeepest, double scale) {
    var array = new JsonArray();
    for (int node = fromDeepest.size() - 1; node >= 0; node -= EVERY) {
      array.add(rounded(fromDeepest.get(node), scale));
    }
    return array;
  }

  private static double rounded(double value, double scale) {
    return Math.rint(value * scale) / scale;
  }
}
