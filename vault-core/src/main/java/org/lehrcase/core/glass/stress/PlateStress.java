package org.lehrcase.core.glass.stress;

import org.lehrcase.core.glass.kind.Material;

/**
 * Stress in the plane of the plate, layer by layer, as a history: shear relaxes, volume stays
 * elastic, and after every step the forces over the depth balance, and the moments too if the plate
 * may bow.
 *
 * <p>With no stress across the plate, s = 6 G R * d(e - th - 2 s / 9 K), where R is what is left of
 * a shear stress after a time. Each exponential of R is followed exactly over a step in which
 * strain grows evenly.
 */
final class PlateStress {
  private final double compliance;
  private final boolean bows;
  private final double[] depth;
  private final double[] parts;
  private final double[] stress;
  private final double[] kept;
  private final double[] stiffness;

  PlateStress(Material material, Support support, int nodes, int terms) {
    this.compliance = 2 / (9 * material.bulkPa());
    this.bows = support == Support.FREE_TO_BOW;
    this.depth = new double[nodes];
    this.parts = new double[nodes * terms];
    this.stress = new double[nodes];
    this.kept = new double[nodes];
    this.stiffness = new double[nodes];
    for (int node = 0; node < nodes; node++) {
      depth[node] = (double) node / (nodes - 1) - 0.5;
    }
  }

  double pa(int node) {
    return stress[node];
  }

  /** Returns the mean stress over the depth, which is 0 but for rounding. */
  double meanPa() {
    double sum = 0;
    for (int node = 0; node < stress.length; node++) {
      sum += share(node) * stress[node];
    }
    return sum / (stress.length - 1);
  }

  /** Goes on by a step; {@code thermal} is the free strain that each node gained in it. */
  void advance(ShearStep step, double[] thermal) {
    for (int node = 0; node < stress.length; node++) {
      double old = 0;
      for (int term = 0; term < step.terms(); term++) {
        old += parts[node * step.terms() + term] * step.left(node, term);
      }
      double gain = step.gain(node);
      double softer = 1 + gain * compliance;
      kept[node] = (old + gain * (compliance * stress[node] - thermal[node])) / softer;
      stiffness[node] = gain / softer;
    }
    double neutral = neutralDepth();
    double strain = -sum(kept) / sum(stiffness);
    double bend = bows ? bend(strain, neutral) : 0;
    for (int node = 0; node < stress.length; node++) {
      double total = strain + bend * (depth[node] - neutral);
      double now = kept[node] + stiffness[node] * total;
      settle(step, node, total - thermal[node] - compliance * (now - stress[node]));
      stress[node] = now;
    }
  }

  /** Returns what remains when all temperature differences are gone and nothing flows any more. */
  double[] residualPa(Material material, double[] celsius) {
    double[] free = new double[celsius.length];
    for (int node = 0; node < free.length; node++) {
      free[node] = material.stressPaPerK() * celsius[node];
    }
    double mean = sum(free) / (free.length - 1);
    double slope = bows ? slope(free, mean) : 0;
    double[] residual = new double[free.length];
    for (int node = 0; node < free.length; node++) {
      residual[node] = stress[node] + free[node] - mean - slope * depth[node];
    }
    return residual;
  }

  private double slope(double[] free, double mean) {
    double moment = 0;
    double square = 0;
    for (int node = 0; node < free.length; node++) {
      moment += share(node) * depth[node] * (free[node] - mean);
      square += share(node) * depth[node] * depth[node];
    }
    return moment / square;
  }

  private double neutralDepth() {
    double moment = 0;
    for (int node = 0; node < depth.length; node++) {
      moment += share(node) * stiffness[node] * depth[node];
    }
    return moment / sum(stiffness);
  }

  private double bend(double strain, double neutral) {
    double moment = 0;
    double resistance = 0;
    for (int node = 0; node < depth.length; node++) {
      double arm = depth[node] - neutral;
      moment += share(node) * arm * (kept[node] + stiffness[node] * strain);
      resistance += share(node) * arm * arm * stiffness[node];
    }
    return -moment / resistance;
  }

  private void settle(ShearStep step, int node, double strain) {
    for (int term = 0; term < step.terms(); term++) {
      int at = node * step.terms() + term;
      parts[at] = parts[at] * step.left(node, term) + step.gain(node, term) * strain;
    }
  }

  private double sum(double[] values) {
    double sum = 0;
    for (int node = 0; node < values.length; node++) {
      sum += share(node) * values[node];
    }
    return sum;
  }

  /** The outermost nodes stand for half a layer. */
  private double share(int node) {
    return node == 0 || node == stress.length - 1 ? 0.5 : 1;
  }
}
