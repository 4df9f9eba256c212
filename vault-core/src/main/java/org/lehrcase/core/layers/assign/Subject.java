package org.lehrcase.core.layers.assign;

/**
 * Something that is painted on one sheet.
 *
 * @param name as the artist calls it
 * @param depth natural logarithm of its distance over that of a reference; only differences count
 * @param weight how much a wrong size of it matters, above 0; usually 1
 */
public record Subject(String name, double depth, double weight) {
  private static final double DEEPEST = 1000;
  private static final double HEAVIEST = 1e6;

  /**
   * Checks the numbers.
   *
   * @throws IllegalArgumentException if the name is empty or a number is out of range
   */
  public Subject {
    if (name.isBlank()) {
      throw new IllegalArgumentException("name of a subject must not be empty");
    }
    if (!(Math.abs(depth) <= DEEPEST)) {
      throw new IllegalArgumentException("depth must lie between -1000 and 1000");
    }
    if (!(weight > 0 && weight <= HEAVIEST)) {
      throw new IllegalArgumentException("weight must be above 0 and at most 1000000");
    }
  }

  /** Returns the same subject at another depth. */
  Subject at(double otherDepth) {
    return new Subject(name, otherDepth, weight);
  }
}
