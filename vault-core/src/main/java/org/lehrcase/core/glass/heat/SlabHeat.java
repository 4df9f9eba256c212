package org.lehrcase.core.glass.heat;

import java.util.Arrays;
import org.lehrcase.core.glass.kind.Material;

/**
 * Temperature over depth: finite volumes around nodes that lie evenly from the insulated plane (the
 * middle of a slab with two exposed faces, the bottom of one with one) to the exposed face.
 *
 * <p>Second order in space. In time either Crank-Nicolson, second order, or fully implicit steps,
 * which are first order, damp every ripple, and are exact once the profile moves at a steady rate.
 */
public final class SlabHeat {
  private final double spacingM;
  private final double conductivity;
  private final double heatJPerM3K;
  private final int firstGlass;
  private final double[] celsius;
  private final double[] upper;
  private final double[] right;

  /**
   * Starts at one temperature throughout.
   *
   * @param slab the block
   * @param material its glass
   * @param glassIntervals distances between the nodes within the glass, at least 2
   * @param startC temperature at the start
   */
  public SlabHeat(Slab slab, Material material, int glassIntervals, double startC) {
    this.spacingM = slab.glassLengthM() / glassIntervals;
    this.firstGlass = (int) Math.round(slab.shelfM() / spacingM);
    this.conductivity = material.conductivityWPerMK();
    this.heatJPerM3K = material.heatJPerM3K();
    int nodes = firstGlass + glassIntervals + 1;
    this.celsius = new double[nodes];
    this.upper = new double[nodes];
    this.right = new double[nodes];
    Arrays.fill(celsius, startC);
  }

  /** Returns the number of nodes within the glass. */
  public int glassNodes() {
    return celsius.length - firstGlass;
  }

  /** Returns the distance between two nodes, metres. */
  public double spacingM() {
    return spacingM;
  }

  /** Returns a temperature in the glass, node 0 being the deepest, °C. */
  public double celsius(int glassNode) {
    return celsius[firstGlass + glassNode];
  }

  /** Returns the temperature of the exposed face, °C. */
  public double faceC() {
    return celsius[celsius.length - 1];
  }

  /** Copies the temperatures in the glass, deepest first. */
  public void copyTo(double[] target) {
    System.arraycopy(celsius, firstGlass, target, 0, glassNodes());
  }

  /**
   * Makes a step with the face at a given temperature.
   *
   * @param seconds length of the step
   * @param faceC the face at the end of the step
   * @param implicit fully implicit instead of Crank-Nicolson
   */
  public void stepWithFaceAt(double seconds, double faceC, boolean implicit) {
    double weight = implicit ? 1 : 0.5;
    double r = conductivity * seconds / (heatJPerM3K * spacingM * spacingM);
    int last = celsius.length - 1;
    explicitPart((1 - weight) * r);
    right[last] = faceC;
    solve(weight * r, 0, 1);
  }

  /**
   * Makes a step with the face giving heat to its surroundings.
   *
   * @param seconds length of the step
   * @param aroundC surroundings before and after the step, °C
   * @param exchangeWPerM2K heat that passes for each kelvin
   * @param implicit fully implicit instead of Crank-Nicolson
   */
  public void stepWithExchange(
      double seconds, double[] aroundC, double exchangeWPerM2K, boolean implicit) {
    double weight = implicit ? 1 : 0.5;
    double r = conductivity * seconds / (heatJPerM3K * spacingM * spacingM);
    double s = 2 * exchangeWPerM2K * seconds / (heatJPerM3K * spacingM);
    int last = celsius.length - 1;
    double before = 1 - weight;
    double flow = 2 * r * (celsius[last - 1] - celsius[last]) + s * (aroundC[0] - celsius[last]);
    double face = celsius[last] + before * flow;
    explicitPart(before * r);
    right[last] = face + weight * s * aroundC[1];
    solve(weight * r, -2 * weight * r, 1 + 2 * weight * r + weight * s);
  }

  /** What the old temperatures give to every node but the face. */
  private void explicitPart(double r) {
    int last = celsius.length - 1;
    right[0] = celsius[0] + 2 * r * (celsius[1] - celsius[0]);
    for (int i = 1; i < last; i++) {
      right[i] = celsius[i] + r * (celsius[i - 1] - 2 * celsius[i] + celsius[i + 1]);
    }
  }

  /** Solves the tridiagonal system by elimination; the last row is the face. */
  private void solve(double r, double faceLower, double faceDiagonal) {
    int last = celsius.length - 1;
    double diagonal = 1 + 2 * r;
    upper[0] = -2 * r / diagonal;
    right[0] /= diagonal;
    for (int i = 1; i < last; i++) {
      double pivot = diagonal + r * upper[i - 1];
      upper[i] = -r / pivot;
      right[i] = (right[i] + r * right[i - 1]) / pivot;
    }
    double pivot = faceDiagonal - faceLower * upper[last - 1];
    celsius[last] = (right[last] - faceLower * right[last - 1]) / pivot;
    for (int i = last - 1; i >= 0; i--) {
      celsius[i] = right[i] - upper[i] * celsius[i + 1];
    }
  }
}
