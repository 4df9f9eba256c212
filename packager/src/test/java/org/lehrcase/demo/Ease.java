package org.lehrcase.demo;

/** Gentle time curves, all from 0 to 1. */
final class Ease {
  private Ease() {}

  /** Returns 0 before {@code from}, 1 after {@code to} (seconds), and a smooth rise between. */
  static double rise(double t, double from, double to) {
    double u = line(t, from, to);
    return u * u * u * (u * (6 * u - 15) + 10);
  }

  /** Returns 0 before {@code from}, 1 after {@code to} and a straight line between. */
  static double line(double t, double from, double to) {
    return Math.max(0, Math.min(1, (t - from) / (to - from)));
  }

  /** Returns 1 between {@code from} and {@code to}, with half a second of fading at both ends. */
  static double during(double t, double from, double to) {
    return rise(t, from, from + 0.5) * (1 - rise(t, to - 0.5, to));
  }

  /** Returns {@code a} moved towards {@code b} by {@code share}. */
  static double mix(double a, double b, double share) {
    return a + (b - a) * share;
  }
}
