package org.lehrcase.desk.light;

import java.util.List;
import java.util.Map;
import org.lehrcase.desk.light.LightWork.Shape;

/**
 * How long making light copies will take and how large they will be, from short measured samples.
 *
 * @param seconds of work
 * @param bytes of all copies together
 */
record LightEstimate(long seconds, long bytes) {
  /**
   * What was measured on a stretch of one film.
   *
   * @param filmSeconds length of the stretch, above 0
   * @param workSeconds how long encoding it took
   * @param bytes how large it became
   */
  record Sample(double filmSeconds, double workSeconds, long bytes) {
    double workPerSecond() {
      return workSeconds / filmSeconds;
    }

    double bytesPerSecond() {
      return bytes / filmSeconds;
    }
  }

  /**
   * Adds up. A film whose shape was not measured counts as the slowest and the largest that was.
   *
   * @param works what is to be made
   * @param samples at least one
   */
  static LightEstimate of(List<LightWork> works, Map<Shape, Sample> samples) {
    double seconds = 0;
    double bytes = 0;
    for (LightWork work : works) {
      Sample own = samples.get(work.shape());
      double slow = own == null ? slowest(samples) : own.workPerSecond();
      double large = own == null ? largest(samples) : own.bytesPerSecond();
      seconds += slow * work.seconds();
      bytes += large * work.seconds();
    }
    return new LightEstimate((long) Math.ceil(seconds), (long) Math.ceil(bytes));
  }

  private static double slowest(Map<Shape, Sample> samples) {
    return samples.values().stream().mapToDouble(Sample::workPerSecond).max().orElse(0);
  }

  private static double largest(Map<Shape, Sample> samples) {
    return samples.values().stream().mapToDouble(Sample::bytesPerSecond).max().orElse(0);
  }
}
