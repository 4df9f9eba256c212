package org.lehrcase.core.glass.heat;

import org.lehrcase.core.glass.kind.Material;

/**
 * Closed forms of a slab whose surface changes at a steady rate (Carslaw and Jaeger, Conduction of
 * Heat in Solids, chapter III).
 *
 * @param lengthM conduction length of the slab
 * @param diffusivityM2PerS diffusivity of the glass
 */
public record SteadyRamp(double lengthM, double diffusivityM2PerS) {
  /** Takes both numbers from a slab and its glass. */
  public static SteadyRamp of(Slab slab, Material material) {
    return new SteadyRamp(slab.conductionLengthM(), material.diffusivityM2PerS());
  }

  /** Returns how far the core stays behind the surface in the long run, kelvin. */
  public double lagK(double kelvinPerS) {
    return kelvinPerS * lengthM * lengthM / (2 * diffusivityM2PerS);
  }

  /** Returns the rate at which the core stays so far behind, K/s. */
  public double rateForLag(double kelvin) {
    return kelvin * 2 * diffusivityM2PerS / (lengthM * lengthM);
  }

  /** Returns the time in which the slowest difference falls to 37 %, seconds. */
  public double timeConstantS() {
    return 4 * lengthM * lengthM / (Math.PI * Math.PI * diffusivityM2PerS);
  }
}
