package org.lehrcase.core.layers.perspective;

import java.util.ArrayList;
import java.util.List;

/**
 * What distance takes from the contrast of a painted sheet (Koschmieder's law), and two ways to
 * paint it: tint towards the colour of the horizon, or a thinner film (Beer and Lambert).
 */
public final class Fading {
  private Fading() {}

  /** What the exponent grows with. */
  public enum By {
    /** Distance itself, as in air; over a deep scene nearly all of it falls on the last sheets. */
    DISTANCE,
    /** The logarithm of distance; even steps, and looks right (common practice, no source). */
    DEPTH
  }

  /**
   * Returns the contrast that each sheet keeps, the front sheet all of it.
   *
   * @param depths mean depth of each sheet, front first, logarithms of distances
   * @param last what the last sheet keeps, above 0 and at most 1
   */
  public static List<Double> kept(List<Double> depths, double last, By by) {
    if (depths.isEmpty() || !(last > 0 && last <= 1)) {
      throw new IllegalArgumentException("contrast of the last sheet must be above 0, at most 1");
    }
    double front = depths.get(0);
    double whole = way(depths.get(depths.size() - 1) - front, by);
    List<Double> kept = new ArrayList<>();
    for (double depth : depths) {
      kept.add(whole > 0 ? Math.pow(last, way(depth - front, by) / whole) : 1);
    }
    return kept;
  }

  /** In units of the front sheet's distance. */
  private static double way(double deeper, By by) {
    return by == By.DEPTH ? deeper : Math.expm1(deeper);
  }

  /** Returns the contrast of sheets in even steps. */
  public static List<Double> evenly(int sheets, double last) {
    return PaintedScale.geometric(sheets, last);
  }

  /**
   * Returns the amount of paint for a share of the contrast, as a share of that on the front.
   *
   * @param kept contrast that is kept, 0 to 1
   * @param through light that the full film lets through, above 0 and below 1
   */
  public static double film(double kept, double through) {
    if (!(through > 0 && through < 1 && kept >= 0 && kept <= 1)) {
      throw new IllegalArgumentException("a film lets some light through and holds some back");
    }
    return Math.log(1 - kept * (1 - through)) / Math.log(through);
  }

  /**
   * Returns a colour on its way to the horizon, each channel in linear light.
   *
   * @param kept contrast that is kept, 0 to 1
   */
  public static double tinted(double colour, double horizon, double kept) {
    return kept * colour + (1 - kept) * horizon;
  }

  /** Returns linear light of a coded sRGB channel, both 0 to 1 (IEC 61966-2-1). */
  public static double linear(double coded) {
    return coded <= 0.04045 ? coded / 12.92 : Math.pow((coded + 0.055) / 1.055, 2.4);
  }

  /** Returns the coded sRGB channel of linear light, both 0 to 1 (IEC 61966-2-1). */
  public static double coded(double linear) {
    return linear <= 0.0031308 ? linear * 12.92 : 1.055 * Math.pow(linear, 1 / 2.4) - 0.055;
  }
}
