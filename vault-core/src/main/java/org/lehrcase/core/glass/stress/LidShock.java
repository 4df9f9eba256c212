package org.lehrcase.core.glass.stress;

import org.lehrcase.core.glass.heat.HeatExchange;
import org.lehrcase.core.glass.heat.Slab;
import org.lehrcase.core.glass.heat.SlabHeat;
import org.lehrcase.core.glass.heat.SteadyRamp;
import org.lehrcase.core.glass.kind.Material;

/**
 * The tension in the surface of a cold, uniformly warm block when the lid opens: found by the same
 * conduction as everything else, held flat. Stress is elastic and in proportion to the kelvins
 * between block and room.
 */
public final class LidShock {
  /**
   * Cold glass conducts worse than glass in its annealing range, for which {@link Material} holds:
   * 1.0 (EN 572-1) to 1.2 W/(m K).
   */
  private static final double COLD_TO_WARM = 1.0 / 1.2;

  private static final int INTERVALS = 24;
  private static final double FIRST = 0.0005;
  private static final double GROWTH = 1.06;
  private static final double LAST = 3;

  private LidShock() {}

  /** Returns the largest tension in the surface for each kelvin above the room, MPa/K. */
  public static double mpaPerK(Slab slab, Material material, HeatExchange exchange) {
    Material cold = cold(material);
    double constant = SteadyRamp.of(slab, cold).timeConstantS();
    double perK = exchange.wPerM2K(0, 0);
    var heat = new SlabHeat(slab, cold, INTERVALS, 1);
    double[] room = {0, 0};
    double worst = 0;
    double length = FIRST * constant;
    boolean implicit = true;
    for (double passed = 0; passed < LAST * constant; passed += length, length *= GROWTH) {
      heat.stepWithExchange(length, room, perK, implicit);
      implicit = false;
      worst = Math.max(worst, meanC(heat) - heat.faceC());
    }
    return worst * material.stressPaPerK() / 1e6;
  }

  /** Returns how many kelvins above the room the block may be, K. */
  public static double allowedK(Slab slab, Material material, double tensionMpa) {
    return tensionMpa / mpaPerK(slab, material, HeatExchange.OPEN_LID);
  }

  private static Material cold(Material warm) {
    return new Material(
        warm.youngsPa(),
        warm.poisson(),
        warm.expansionPerK(),
        warm.diffusivityM2PerS() * COLD_TO_WARM,
        warm.conductivityWPerMK() * COLD_TO_WARM);
  }

  private static double meanC(SlabHeat heat) {
    int last = heat.glassNodes() - 1;
    double sum = (heat.celsius(0) + heat.celsius(last)) / 2;
    for (int node = 1; node < last; node++) {
      sum += heat.celsius(node);
    }
    return sum / last;
  }
}
