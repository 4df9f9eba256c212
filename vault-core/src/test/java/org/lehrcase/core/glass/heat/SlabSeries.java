package org.lehrcase.core.glass.heat;

/** Exact solutions of the slab as sums, from the textbooks; for tests only. */
final class SlabSeries {
  private static final int TERMS = 200;

  private SlabSeries() {}

  /** Step of the face temperature: what is left at the place x of the way from the middle. */
  static double step(double x, double fo) {
    double sum = 0;
    for (int k = 0; k < TERMS; k++) {
      double m = (2 * k + 1) * Math.PI / 2;
      sum += 2 * sign(k) / m * Math.cos(m * x) * Math.exp(-m * m * fo);
    }
    return sum;
  }

  /** The same, mean over the depth. */
  static double stepMean(double fo) {
    double sum = 0;
    for (int k = 0; k < TERMS; k++) {
      double m = (2 * k + 1) * Math.PI / 2;
      sum += 2 / (m * m) * Math.exp(-m * m * fo);
    }
    return sum;
  }

  /** A ramp of the face: lag over its final value in the middle. */
  static double ramp(double x, double fo) {
    double sum = 1 - x * x;
    for (int k = 0; k < TERMS; k++) {
      double m = (2 * k + 1) * Math.PI / 2;
      sum -= 4 * sign(k) / (m * m * m) * Math.cos(m * x) * Math.exp(-m * m * fo);
    }
    return sum;
  }

  /** Root number n of z tan z = Bi. */
  static double root(int n, double bi) {
    double low = n * Math.PI;
    double high = low + Math.PI / 2;
    for (int i = 0; i < 200; i++) {
      double middle = (low + high) / 2;
      boolean under = middle * Math.sin(middle) < bi * Math.cos(middle);
      // beyond a half turn both sine and cosine change sign
      if ((n % 2 == 0) == under) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  static double coefficient(double z) {
    return 4 * Math.sin(z) / (2 * z + Math.sin(2 * z));
  }

  /** Step of the surroundings: what is left in the place x. */
  static double exchange(double x, double bi, double fo) {
    double sum = 0;
    for (int n = 0; n < 60; n++) {
      double z = root(n, bi);
      sum += coefficient(z) * Math.cos(z * x) * Math.exp(-z * z * fo);
    }
    return sum;
  }

  private static int sign(int k) {
    return k % 2 == 0 ? 1 : -1;
  }
}
