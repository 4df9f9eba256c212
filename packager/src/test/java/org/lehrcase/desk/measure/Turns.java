package org.lehrcase.desk.measure;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** How long several ways took that were tried by turns, in seconds. */
final class Turns {
  private final Map<String, List<Double>> seconds = new LinkedHashMap<>();

  void add(int round, String what, double took) {
    seconds.computeIfAbsent(what, any -> new ArrayList<>()).add(took);
    System.out.printf(Locale.ROOT, "round %d  %-20s %7.2f s%n", round + 1, what, took);
  }

  /** The median of the ratios within a round: how many times as long the other took. */
  double ratio(String what, String other) {
    List<Double> ratios = new ArrayList<>();
    for (int round = 0; round < seconds.get(what).size(); round++) {
      ratios.add(seconds.get(other).get(round) / seconds.get(what).get(round));
    }
    return median(ratios);
  }

  void print(PrintStream out, double megabytes) {
    seconds.forEach(
        (what, took) -> {
          double median = median(took);
          out.printf(Locale.ROOT, "%-20s %6.2f s  %6.0f MB/s%n", what, median, megabytes / median);
        });
  }

  private static double median(List<Double> values) {
    return values.stream().sorted().toList().get(values.size() / 2);
  }
}
