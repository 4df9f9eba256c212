package org.lehrcase.bench.layers;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.layers.assign.Scene;
import org.lehrcase.core.layers.assign.SheetPlan;
import org.lehrcase.core.layers.assign.SheetPlanner;
import org.lehrcase.core.layers.block.DamBed;
import org.lehrcase.core.layers.optics.Refraction;
import org.lehrcase.core.layers.optics.Viewing;
import org.lehrcase.core.layers.perspective.Fading;
import org.lehrcase.core.layers.perspective.PaintedScale;
import org.lehrcase.core.layers.tone.ValueStudy;

/** What each sheet of a plan needs, and the block that they become. */
final class SheetAnswers {
  private static final Refraction GLASS = Refraction.SODA_LIME;

  /** Head movement for which the sheets' sliding is told, and the distance if none is given. */
  private static final double HEAD_MM = 100;

  private static final double USUAL_VIEW_MM = 500;

  /** Without a place of viewing: how far aside somebody looks in. */
  private static final double USUAL_DEGREES = 45;

  private final PieceRequest piece;
  private final Scene scene;
  private final SheetPlan plan;

  SheetAnswers(SceneRequest request, SheetPlanner planner, SheetPlan plan) {
    this.piece = request.piece();
    this.scene = plan.moves().isEmpty() ? request.scene() : planner.repaired();
    this.plan = plan;
  }

  /** One entry a sheet, the front first; a clear sheet has neither scale nor contrast. */
  JsonArray sheets() {
    List<Integer> painted = new ArrayList<>();
    List<Double> depths = new ArrayList<>();
    for (int sheet = 1; sheet <= plan.sheets(); sheet++) {
      List<Integer> on = plan.on(sheet);
      if (!on.isEmpty()) {
        painted.add(sheet);
        depths.add(mean(on));
      }
    }
    List<Double> kept = Fading.kept(depths, piece.lastContrast(), piece.by());
    var list = new JsonArray();
    for (int sheet = 1; sheet <= plan.sheets(); sheet++) {
      var one = new JsonObject();
      one.addProperty("sheet", sheet);
      var names = new JsonArray();
      scene.names(plan.on(sheet)).forEach(names::add);
      one.add("subjects", names);
      int at = painted.indexOf(sheet);
      if (at >= 0) {
        one.addProperty("scale", PaintedScale.of(depths.get(at), depths.get(0)));
        one.addProperty("contrast", kept.get(at));
        one.addProperty("film", Fading.film(kept.get(at), piece.filmThrough()));
        one.addProperty("tones", ValueStudy.tones(sheet, plan.sheets()));
      }
      piece.bed().ifPresent(bed -> addEdges(one, bed, (int) one.get("sheet").getAsLong()));
      list.add(one);
    }
    return list;
  }

  private double mean(List<Integer> on) {
    double sum = 0;
    double weight = 0;
    for (int i : on) {
      sum += scene.subjects().get(i).weight() * scene.subjects().get(i).depth();
      weight += scene.subjects().get(i).weight();
    }
    return sum / weight;
  }

  private double degrees(DamBed bed) {
    double opening = Math.max(bed.stack().widthMm(), bed.stack().heightMm());
    return piece.viewing().map(v -> v.steepestDegrees(opening)).orElse(USUAL_DEGREES);
  }

  /** Paint on the front faces: sheet k lies k − 1 pitches deep. */
  private void addEdges(JsonObject one, DamBed bed, int sheet) {
    double pitch = bed.fusedMm(0) / plan.sheets();
    double deep = (sheet - 1) * pitch;
    double degrees = degrees(bed);
    one.addProperty("depth_mm", deep);
    Viewing viewing = piece.viewing().orElse(new Viewing(USUAL_VIEW_MM, 0));
    one.addProperty("slides_mm_per_100_mm", viewing.shiftMm(deep, HEAD_MM, GLASS));
    one.addProperty("margin_mm", Viewing.marginMm(piece.gapMm(), deep, degrees, GLASS));
    one.addProperty("tuck_under_mm", sheet == 1 ? 0 : Viewing.tuckUnderMm(pitch, degrees, GLASS));
  }

  /** The block, its dams, and whether they stand on the shelf. */
  JsonObject block(DamBed bed) {
    var json = new JsonObject();
    json.addProperty("pile_mm", bed.stack().pileMm());
    json.addProperty("fused_mm", bed.fusedMm(0));
    json.addProperty("fused_if_liner_gives_way_mm", bed.fusedMm(bed.linerMm()));
    json.addProperty("weight_g", bed.stack().grams());
    json.add("bed_mm", numbers(List.of(bed.bedWidthMm(), bed.bedHeightMm())));
    json.add("strips_mm", numbers(bed.stripsMm()));
    json.add("footprint_mm", numbers(bed.footprintMm(0)));
    json.addProperty("liner_height_mm", bed.linerHeightMm());
    json.addProperty("least_dam_mm", bed.leastDamMm());
    json.addProperty("thrust_n_per_m", bed.thrustNewtonPerM());
    json.addProperty("grip_n_per_m", bed.gripNewtonPerM());
    var troubles = new JsonArray();
    if (!bed.isHighEnough() && piece.kiln().isEmpty()) {
      troubles.add("The dams are lower than the unfired pile with its reserve.");
    }
    if (!bed.standsAlone()) {
      troubles.add("When all glass is fluid these strips may slide or tip: prop them.");
    }
    piece.kiln().ifPresent(kiln -> kiln.troubles(bed).forEach(troubles::add));
    json.add("troubles", troubles);
    piece.kiln().ifPresent(kiln -> json.addProperty("blocks_per_load", kiln.blocks(bed)));
    piece
        .viewing()
        .ifPresent(v -> json.addProperty("stereo_least_pitch_mm", v.leastPitchMm(0.5, GLASS)));
    return json;
  }

  private static JsonArray numbers(List<Double> numbers) {
    var list = new JsonArray();
    numbers.forEach(list::add);
    return list;
  }
}
