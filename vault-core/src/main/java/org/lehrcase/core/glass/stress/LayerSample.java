package org.lehrcase.core.glass.stress;

import java.util.List;

/**
 * The block at a moment, layer by layer from the deepest to the exposed face.
 *
 * @param hours since the start
 * @param kilnC what the kiln shows
 * @param celsius temperature
 * @param stressMpa stress with structural relaxation, held flat
 */
public record LayerSample(
    double hours, double kilnC, List<Double> celsius, List<Double> stressMpa) {
  /** Copies the lists. */
  public LayerSample {
    celsius = List.copyOf(celsius);
    stressMpa = List.copyOf(stressMpa);
  }

  /** Returns the deepest layer's temperature. */
  public double coreC() {
    return celsius.get(0);
  }

  /** Returns the exposed face's temperature. */
  public double faceC() {
    return celsius.get(celsius.size() - 1);
  }

  /** Returns the deepest layer's stress, MPa. */
  public double coreMpa() {
    return stressMpa.get(0);
  }

  /** Returns the exposed face's stress, MPa. */
  public double faceMpa() {
    return stressMpa.get(stressMpa.size() - 1);
  }
}
