package org.lehrcase.core.glass.stress;

import org.lehrcase.core.glass.kind.Material;
import org.lehrcase.core.glass.kind.RelaxationSpectrum;

/**
 * What one time step leaves of old stress and gives to new strain, node by node; worked out once
 * and shared by all supports.
 */
final class ShearStep {
  private static final double[] ONE = {1};

  private final double[] weights;
  private final double[] times;
  private final double sixShearPa;
  private final double[] left;
  private final double[] gains;
  private final double[] totals;

  private ShearStep(int nodes, Material material, double[] weights, double[] times) {
    this.weights = weights;
    this.times = times;
    this.sixShearPa = 6 * material.shearPa();
    this.left = new double[nodes * weights.length];
    this.gains = new double[nodes * weights.length];
    this.totals = new double[nodes];
  }

  static ShearStep of(Relaxation relaxation, Material material, int nodes) {
    if (relaxation == Relaxation.PLAIN) {
      return new ShearStep(nodes, material, ONE, ONE);
    }
    double[] weights = new double[RelaxationSpectrum.TERMS];
    double[] times = new double[RelaxationSpectrum.TERMS];
    for (int term = 0; term < weights.length; term++) {
      weights[term] = RelaxationSpectrum.weight(term);
      times[term] = RelaxationSpectrum.shearTime(term);
    }
    return new ShearStep(nodes, material, weights, times);
  }

  int terms() {
    return weights.length;
  }

  int nodes() {
    return totals.length;
  }

  /**
   * Prepares a node.
   *
   * @param maxwellSeconds viscosity over shear modulus in the middle of the step
   */
  void prepare(int node, double maxwellSeconds, double seconds) {
    double total = 0;
    for (int term = 0; term < weights.length; term++) {
      double u = seconds / (times[term] * maxwellSeconds);
      double share = RelaxationSpectrum.left(u);
      double gain = sixShearPa * weights[term] * RelaxationSpectrum.meanLeft(u, share);
      left[node * weights.length + term] = share;
      gains[node * weights.length + term] = gain;
      total += gain;
    }
    totals[node] = total;
  }

  double left(int node, int term) {
    return left[node * weights.length + term];
  }

  double gain(int node, int term) {
    return gains[node * weights.length + term];
  }

  double gain(int node) {
    return totals[node];
  }
}
