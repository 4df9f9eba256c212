package org.lehrcase.core.glass.kind;

/**
 * A figure and where it comes from.
 *
 * @param value in the unit of its {@link GlassFigure}
 * @param certainty how much it can be leaned on
 * @param source who says so, in words
 */
public record Datum(double value, Certainty certainty, String source) {
  /**
   * Checks the number.
   *
   * @throws IllegalArgumentException if it is not a finite number
   */
  public Datum {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("a figure must be a number");
    }
  }
}
