package org.lehrcase.bench.firing;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.Locale;
import org.lehrcase.core.glass.kind.Datum;
import org.lehrcase.core.glass.kind.GlassFigure;
import org.lehrcase.core.glass.kind.GlassKind;
import org.lehrcase.core.glass.kind.Material;
import org.lehrcase.core.glass.kind.Vft;
import org.lehrcase.core.glass.plan.FiringPlanner;

/**
 * The glass that was reckoned with: its figures with their sources, and what follows from them at
 * the fixed points, so that anybody can hold them against a maker's sheet.
 */
final class GlassAnswer {
  private GlassAnswer() {}

  static JsonObject of(GlassKind glass) {
    var item = new JsonObject();
    item.addProperty("id", glass.id());
    item.addProperty("name", glass.name());
    item.add("figures", figures(glass));
    item.addProperty("strain_predicted", glass.isStrainPredicted());
    item.add("points", points(glass));
    Material material = glass.material();
    item.addProperty("diffusivity_mm2_per_s", digits(material.diffusivityM2PerS() * 1e6));
    item.addProperty("stress_mpa_per_k", digits(material.stressPaPerK() / 1e6));
    return item;
  }

  private static JsonObject figures(GlassKind glass) {
    var figures = new JsonObject();
    for (GlassFigure figure : GlassFigure.values()) {
      glass.figure(figure).ifPresent(datum -> figures.add(figure.key(), figure(datum)));
    }
    return figures;
  }

  private static JsonObject figure(Datum datum) {
    var item = new JsonObject();
    item.addProperty("value", datum.value());
    item.addProperty("certainty", datum.certainty().name().toLowerCase(Locale.ROOT));
    item.addProperty("source", datum.source());
    return item;
  }

  private static JsonArray points(GlassKind glass) {
    var points = new JsonArray();
    points.add(onTheLine(glass, "working", Vft.WORKING));
    points.add(onTheLine(glass, "top", FiringPlanner.TOP_LOG10));
    points.add(onTheLine(glass, "softening", Vft.SOFTENING));
    points.add(onTheLine(glass, "squeeze", FiringPlanner.SQUEEZE_LOG10));
    points.add(onTheLine(glass, "annealing", Vft.ANNEALING));
    points.add(point(glass, "strain", Vft.STRAIN, glass.viscosity().strainC()));
    return points;
  }

  private static JsonObject onTheLine(GlassKind glass, String name, double log10PaS) {
    return point(glass, name, log10PaS, glass.viscosity().celsiusAt(log10PaS));
  }

  /** The time in which a plate of this viscosity forgets a stress to 37 %. */
  private static JsonObject point(GlassKind glass, String name, double log10PaS, double celsius) {
    Material material = glass.material();
    double perPaS = 6 * (1 - material.poisson()) / material.youngsPa();
    var item = new JsonObject();
    item.addProperty("name", name);
    item.addProperty("log10_pa_s", log10PaS);
    item.addProperty("celsius", FiringAnswer.rounded(celsius, 1));
    item.addProperty("plate_relaxation_s", digits(perPaS * Math.pow(10, log10PaS)));
    return item;
  }

  /** Four digits are more than any of this is worth. */
  private static double digits(double value) {
    return Double.parseDouble(String.format(Locale.ROOT, "%.4g", value));
  }
}
