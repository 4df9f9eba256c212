package org.lehrcase.core.glass.stress;

import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.glass.kind.Material;

/** Follows one history of stress and keeps what was worst. */
final class StressWatch {
  private final Relaxation relaxation;
  private final Support support;
  private final PlateStress plate;
  private final int nodes;
  private PeakTension heating = PeakTension.NONE;
  private PeakTension cooling = PeakTension.NONE;
  private double imbalancePa;

  StressWatch(Relaxation relaxation, Support support, Material material, ShearStep shear) {
    this.relaxation = relaxation;
    this.support = support;
    this.nodes = shear.nodes();
    this.plate = new PlateStress(material, support, nodes, shear.terms());
  }

  double mpa(int node) {
    return plate.pa(node) / 1e6;
  }

  /** A moment of the firing, for saying when something happened. */
  record Moment(double hours, double kilnC, int line, boolean beforeTop, double depthMmPerNode) {}

  void advance(GlassLayers layers, Moment moment) {
    plate.advance(layers.shear(relaxation), layers.strain(relaxation));
    imbalancePa = Math.max(imbalancePa, Math.abs(plate.meanPa()));
    int worst = 0;
    for (int node = 1; node < nodes; node++) {
      if (plate.pa(node) > plate.pa(worst)) {
        worst = node;
      }
    }
    PeakTension before = moment.beforeTop() ? heating : cooling;
    if (mpa(worst) > before.mpa()) {
      double depth = (nodes - 1 - worst) * moment.depthMmPerNode();
      var peak = new PeakTension(mpa(worst), depth, moment.hours(), moment.kilnC(), moment.line());
      if (moment.beforeTop()) {
        heating = peak;
      } else {
        cooling = peak;
      }
    }
  }

  StressOutcome outcome(Material material, double[] celsius) {
    List<Double> residual = new ArrayList<>();
    for (double pa : plate.residualPa(material, celsius)) {
      residual.add(pa / 1e6);
    }
    return new StressOutcome(relaxation, support, heating, cooling, residual, imbalancePa);
  }
}
