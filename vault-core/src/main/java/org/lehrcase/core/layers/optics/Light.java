package org.lehrcase.core.layers.optics;

/**
 * Light straight through clear sheets, all inner reflections with it (Stokes 1862, the pile of
 * plates; derived again by adding sheet to sheet).
 *
 * @param through share that comes through
 * @param back share that comes back
 */
public record Light(double through, double back) {
  /** Returns the share that one surface reflects (Fresnel). */
  public static double surface(Refraction glass) {
    double r = (glass.index() - 1) / (glass.index() + 1);
    return r * r;
  }

  /** Returns what so many loose, clear sheets let through. */
  public static Light loose(int sheets, Refraction glass) {
    double r = surface(glass);
    double through = (1 - r) / (1 + (2 * sheets - 1) * r);
    return new Light(through, 1 - through);
  }

  /** Returns what a clear block lets through, of however many sheets. */
  public static Light fused(Refraction glass) {
    return loose(1, glass);
  }

  /**
   * Returns one sheet whose glass swallows some light.
   *
   * @param inside share that is left after one way through the glass
   */
  public static Light sheet(double inside, Refraction glass) {
    double r = surface(glass);
    double through = (1 - r) * (1 - r) * inside / (1 - r * r * inside * inside);
    return new Light(through, r + r * inside * through);
  }

  /** Returns this sheet or pile with another one behind it. */
  public Light before(Light behind) {
    double rounds = 1 - back * behind.back;
    return new Light(
        through * behind.through / rounds, back + through * through * behind.back / rounds);
  }
}
