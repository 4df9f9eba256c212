package org.lehrcase.core.layers.assign;

import java.util.Comparator;

/**
 * One subject hides part of another.
 *
 * @param front place in the scene's list of the one that hides
 * @param back place of the one that is partly hidden
 */
public record Occlusion(int front, int back) implements Comparable<Occlusion> {
  private static final Comparator<Occlusion> ORDER =
      Comparator.comparingInt(Occlusion::front).thenComparingInt(Occlusion::back);

  /**
   * Checks the places.
   *
   * @throws IllegalArgumentException if a subject would hide itself
   */
  public Occlusion {
    if (front < 0 || back < 0 || front == back) {
      throw new IllegalArgumentException("a subject cannot be in front of itself");
    }
  }

  @Override
  public int compareTo(Occlusion other) {
    return ORDER.compare(this, other);
  }
}
