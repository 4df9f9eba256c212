package org.lehrcase.core.layers.assign;

import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * What tells how far away a subject is. Everything but a rank gives the logarithm of the distance
 * over one and the same length (the metre times the focal length over the millimetre), so that the
 * kinds may be mixed.
 */
public final class Evidence {
  /** Between two neighbouring ranks where nothing else is known: a quarter farther away each. */
  public static final double RANK_STEP = Math.log(1.25);

  private Evidence() {}

  /**
   * Returns the depth of something whose true height is known: distance goes as true over drawn.
   *
   * @throws IllegalArgumentException if a height is not above 0
   */
  public static double bySize(double trueHeightM, double drawnHeightMm) {
    return Math.log(above0(trueHeightM, "real_height_m") / above0(drawnHeightMm, "drawn height"));
  }

  /**
   * Returns the depth of something that stands on level ground.
   *
   * @param eyeHeightM of whoever looks at the scene
   * @param belowHorizonMm how far its foot is drawn below the horizon
   * @throws IllegalArgumentException if a length is not above 0
   */
  public static double byFoot(double eyeHeightM, double belowHorizonMm) {
    return Math.log(
        above0(eyeHeightM, "eye_height_m") / above0(belowHorizonMm, "foot_below_horizon_mm"));
  }

  private static double above0(double length, String name) {
    if (!(length > 0)) {
      throw new IllegalArgumentException(name + " must be above 0");
    }
    return length;
  }

  /**
   * Returns the depth of a rank, 1 being nearest: between known ones in proportion, beyond them by
   * even steps.
   *
   * @param known depths of subjects whose rank is known too
   */
  public static double byRank(double rank, Map<Double, Double> known) {
    NavigableMap<Double, Double> sorted = new TreeMap<>(known);
    var below = sorted.floorEntry(rank);
    var above = sorted.ceilingEntry(rank);
    if (below != null && above != null) {
      double width = above.getKey() - below.getKey();
      double share = width == 0 ? 0 : (rank - below.getKey()) / width;
      return below.getValue() + share * (above.getValue() - below.getValue());
    }
    if (below != null) {
      return below.getValue() + (rank - below.getKey()) * RANK_STEP;
    }
    if (above != null) {
      return above.getValue() - (above.getKey() - rank) * RANK_STEP;
    }
    return (rank - 1) * RANK_STEP;
  }
}
